//! Step one: what the maps say at a place, each on its own datum.

use super::boundary::floods;
use super::water::deciding;
use super::{
    BoundaryAnswer, BoundaryError, Candidate, LevelMaps, LevelSource, boundary_level, level_lines,
    rasters,
};
use crate::crs::CrsError;
use crate::hazard::{Zone, ZoneMap};
use crate::quantity::{AnnualChance, Length};
use crate::site::Location;
use crate::terrain::{Gap, Ground, Terrain, TerrainError};

/// What is asked of the maps at a place.
#[derive(Clone, Copy)]
pub struct MapQuestion<'a> {
    /// The place.
    pub location: Location,
    /// The event.
    pub event: AnnualChance,
    /// The zones that hold the place, the worst first.
    pub zones: &'a [&'a Zone],
    /// The zone layers.
    pub zone_maps: &'a [ZoneMap],
    /// Everything else that states levels.
    pub maps: &'a LevelMaps,
    /// The terrain.
    pub terrain: &'a Terrain,
    /// Standard deviation of the terrain, where one is known.
    pub terrain_sd: Option<Length>,
    /// The ground at the place, on the terrain's own datum.
    pub ground: Result<&'a Ground, Gap>,
    /// When the edge of the zone is read on the terrain.
    pub edge: EdgeUse,
}

/// When the edge of a zone is read on the terrain, which takes a thousand times as long as
/// any other source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeUse {
    /// At every place: where another source decides, the edge is one more to compare with.
    Always,
    /// Where no other map has a level of the event.
    IfNothingElse,
}

/// What the maps say of the level at a place, of whatever flood and on whatever datum.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MapLevels {
    pub(super) candidates: Vec<Candidate>,
    pub(super) silent: Vec<Silence>,
    pub(super) remarks: Vec<String>,
    /// Levels of the river beside a place that the map puts outside the flood.
    pub(super) beside: Vec<Candidate>,
}

/// A source that was asked and has no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Silence {
    /// The source.
    pub source: LevelSource,
    /// Why.
    pub why: String,
}

/// A source that cannot be read.
#[derive(Debug, thiserror::Error)]
pub enum LevelError {
    /// A raster.
    #[error(transparent)]
    Terrain(#[from] TerrainError),
    /// A layer whose system cannot hold the place.
    #[error(transparent)]
    Crs(#[from] CrsError),
}

impl From<BoundaryError> for LevelError {
    fn from(error: BoundaryError) -> Self {
        match error {
            BoundaryError::Terrain(error) => error.into(),
            BoundaryError::Crs(error) => error.into(),
        }
    }
}

/// Asks rasters, lines and the edge of the zone for the level at a place.
///
/// # Errors
/// [`LevelError`] where a raster or a layer cannot be read.
pub fn map_levels(question: &MapQuestion<'_>) -> Result<MapLevels, LevelError> {
    let mut levels = rasters::answers(question)?;
    level_lines::ask(question, &mut levels);
    if question.edge == EdgeUse::Always || !has_level(question, &levels) {
        ask_edge(question, &mut levels)?;
    }
    level_lines::beside(question, &mut levels);
    Ok(levels)
}

impl MapLevels {
    /// Whether no map said anything.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let Self {
            candidates,
            silent,
            remarks,
            beside,
        } = self;
        candidates.is_empty() && silent.is_empty() && remarks.is_empty() && beside.is_empty()
    }
}

/// Whether a map has a level of the event: by what was read, or by the zone's own record.
fn has_level(question: &MapQuestion<'_>, read: &MapLevels) -> bool {
    let event = question.event;
    let mut zones = deciding(question.zones);
    read.candidates
        .iter()
        .any(|candidate| candidate.chance.same_event(event))
        || zones.any(|zone| zone.level.is_some() && zone.annual_chance.same_event(event))
}

/// The edge of the zone on the terrain, where both are given.
fn ask_edge(question: &MapQuestion<'_>, levels: &mut MapLevels) -> Result<(), LevelError> {
    let mut zones = question.zones.iter();
    let water =
        zones.any(|zone| zone.annual_chance.same_event(question.event) && floods(zone.class));
    if question.terrain.dems().is_empty() || !water {
        return Ok(());
    }
    for map in question.zone_maps {
        let MapQuestion {
            terrain,
            event,
            location,
            terrain_sd,
            ..
        } = *question;
        match boundary_level(map, terrain, event, location, terrain_sd) {
            Ok(BoundaryAnswer::NoZone)
            | Err(BoundaryError::Crs(CrsError::OutsideDomain { .. })) => {}
            Ok(BoundaryAnswer::Level(found)) => levels.candidates.push(found.candidate),
            Ok(BoundaryAnswer::Refused(refusal)) => levels.silent.push(Silence {
                source: LevelSource::BoundaryOnTerrain,
                why: refusal.to_string(),
            }),
            Err(error) => return Err(error.into()),
        }
    }
    Ok(())
}
