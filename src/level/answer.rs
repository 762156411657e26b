//! Asking all sources.

use super::curve::{self, Curve};
use super::{
    BoundaryAnswer, BoundaryError, Candidate, FloodLevel, HighestGrade, LevelMaps, LevelSource,
    boundary_level, depth_over_grade, level_lines, rasters, stated, zone_static,
};
use crate::crs::{CrsError, DatumError, Datums};
use crate::design::StatedLevel;
use crate::hazard::{Zone, ZoneClass, ZoneMap};
use crate::quantity::{AnnualChance, Length, VerticalDatum};
use crate::site::Location;
use crate::terrain::{Gap, Ground, Terrain, TerrainError};

/// What is asked: the level of an event at a place, on a datum.
#[derive(Clone, Copy)]
pub struct Question<'a> {
    /// The place.
    pub location: Location,
    /// The event.
    pub event: AnnualChance,
    /// The datum that the answer has to stand on.
    pub datum: VerticalDatum,
    /// What puts heights on that datum.
    pub datums: &'a Datums,
    /// Levels that the user states.
    pub stated: &'a [StatedLevel],
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
    /// The ground at the place, on the datum that is asked for.
    pub ground: Result<&'a Ground, Gap>,
    /// The highest ground against the wall, on the datum that is asked for.
    pub highest_grade: Option<&'a HighestGrade>,
    /// Standard deviation of a zone's depth number.
    pub depth_sd: Option<Length>,
    /// Standard deviations that the user gives for levels, by their source.
    pub level_sd: &'a dyn Fn(LevelSource) -> Option<Length>,
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

impl Question<'_> {
    /// The zones whose records may say how high the water of the worst zone stands: those of
    /// the same kind of flood. A wave zone without a level does not borrow the level of the
    /// calmer zone below it; a floodway does, because it is a part of the detailed zone.
    pub(super) fn deciding_zones(&self) -> impl Iterator<Item = &Zone> {
        let worst = self.zones.first().map(|zone| kind(zone.class));
        self.zones
            .iter()
            .copied()
            .take_while(move |zone| Some(kind(zone.class)) == worst)
    }

    /// Whether the lines of a river may speak for the place: they do where the zone is flooded
    /// by it, or where nobody looked the zone up. They do not reach behind a levee, up a beach
    /// or over ground that the map calls outside or unknown.
    pub(super) fn lines_may_speak(&self) -> bool {
        match self.zones.first() {
            Some(worst) => matches!(
                worst.class,
                ZoneClass::Detailed | ZoneClass::Floodway | ZoneClass::Approximate
            ),
            None => self.zone_maps.is_empty(),
        }
    }

    /// Whether the map itself puts the place outside the flood.
    pub(super) fn map_says_outside(&self) -> bool {
        self.zones.first().is_some_and(|worst| {
            matches!(
                worst.class,
                ZoneClass::Minimal | ZoneClass::Unspecified | ZoneClass::Rare
            )
        })
    }

    /// The candidate on the datum that is asked for.
    fn on_datum(&self, candidate: Candidate) -> Result<Candidate, Box<Refusal>> {
        match self
            .datums
            .convert(candidate.elevation, self.datum, self.location)
        {
            // Not where the shift is nothing: two datums may agree at a place, by a stated offset.
            Ok(_) if candidate.elevation.datum() == self.datum => Ok(candidate),
            Ok(conversion) => Ok(Candidate {
                elevation: conversion.elevation,
                sd: candidate
                    .sd
                    .zip(conversion.standard_deviation)
                    .map(|(own, shift)| own.hypot(shift)),
                how: format!(
                    "{}; converted from {} {}",
                    candidate.how,
                    candidate.elevation.datum(),
                    conversion.how
                ),
                reference: format!("{}; {}", candidate.reference, conversion.reference),
                ..candidate
            }),
            Err(error) => Err(Box::new(Refusal { candidate, error })),
        }
    }
}

/// The class that stands for all classes with the same water.
const fn kind(class: ZoneClass) -> ZoneClass {
    match class {
        ZoneClass::Floodway => ZoneClass::Detailed,
        other => other,
    }
}

/// The level, and what was refused on the way.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LevelAnswer {
    /// The level with its ranked sources; `None` where no source has one.
    pub level: Option<FloodLevel>,
    /// Levels of several floods as one curve, where at least two are known.
    pub curve: Option<Curve>,
    /// The level of the river beside a place that the map puts outside the flood.
    pub beside: Option<Candidate>,
    /// Levels that could not be put on the datum that was asked for.
    pub refused: Vec<Refusal>,
    /// Sources that were asked and do not tell the level there.
    pub silent: Vec<Silence>,
    /// What a reader has to know of the levels.
    pub remarks: Vec<String>,
}

/// A source that was asked and has no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Silence {
    /// The source.
    pub source: LevelSource,
    /// Why.
    pub why: String,
}

/// What sources answer, of whatever flood and on whatever datum.
#[derive(Default)]
pub(super) struct Answers {
    pub(super) candidates: Vec<Candidate>,
    pub(super) silent: Vec<Silence>,
    pub(super) remarks: Vec<String>,
}

/// A level that stands on another datum and cannot be put on the one that is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The level.
    pub candidate: Candidate,
    /// Why it cannot be converted.
    pub error: DatumError,
}

/// Asks every source for the flood level.
///
/// 1. Each source that has a level gives a candidate; stated levels and rasters do so for
///    every flood.
/// 2. A candidate on another datum than the one asked for is converted; where that cannot be
///    done it is refused, never shifted by nothing.
/// 3. Those of the assessed event are ranked by authority ([`LevelSource`]).
/// 4. Levels of several floods make a curve; where no source has the assessed event and the
///    curve holds it, the level is read from the curve.
///
/// # Errors
/// [`LevelError`] where a raster or a layer cannot be read.
pub fn flood_level(question: &Question<'_>) -> Result<LevelAnswer, LevelError> {
    let mut answers = rasters::answers(question)?;
    answers.candidates.extend(stated::candidates(question));
    answers.candidates.extend(zone_static::candidates(question));
    level_lines::ask(question, &mut answers);
    answers
        .candidates
        .extend(depth_over_grade::candidate(question));
    ask_boundary(question, &mut answers)?;

    let mut refused = Vec::new();
    let mut usable = Vec::new();
    for mut candidate in answers.candidates {
        candidate.sd = (question.level_sd)(candidate.source).or(candidate.sd);
        match question.on_datum(candidate) {
            Ok(candidate) => usable.push(candidate),
            Err(refusal) if refusal.candidate.chance.same_event(question.event) => {
                refused.push(*refusal);
            }
            Err(refusal) => answers.silent.push(Silence {
                source: refusal.candidate.source,
                why: format!(
                    "{} annual chance: {}",
                    refusal.candidate.chance, refusal.error
                ),
            }),
        }
    }
    let mut remarks = answers.remarks;
    let curve = curve::of(&usable, &mut remarks);
    let of_event = usable
        .into_iter()
        .filter(|candidate| candidate.chance.same_event(question.event));
    let level = FloodLevel::rank(of_event.collect()).or_else(|| {
        FloodLevel::rank(
            curve
                .iter()
                .filter_map(|curve| curve.candidate(question.event))
                .collect(),
        )
    });
    let beside =
        level_lines::beside(question).filter_map(|candidate| question.on_datum(candidate).ok());
    let beside = FloodLevel::rank(beside.collect()).map(|level| level.decided);
    Ok(LevelAnswer {
        level,
        curve,
        beside,
        refused,
        silent: answers.silent,
        remarks,
    })
}

/// The edge of the zone on the terrain, where both are given.
fn ask_boundary(question: &Question<'_>, answers: &mut Answers) -> Result<(), LevelError> {
    if question.terrain.dems().is_empty() {
        return Ok(());
    }
    for map in question.zone_maps {
        let Question {
            terrain,
            event,
            location,
            terrain_sd,
            ..
        } = *question;
        match boundary_level(map, terrain, event, location, terrain_sd) {
            Ok(BoundaryAnswer::NoZone)
            | Err(BoundaryError::Crs(CrsError::OutsideDomain { .. })) => {}
            Ok(BoundaryAnswer::Level(found)) => answers.candidates.push(found.candidate),
            Ok(BoundaryAnswer::Refused(refusal)) => answers.silent.push(Silence {
                source: LevelSource::BoundaryOnTerrain,
                why: refusal.to_string(),
            }),
            Err(error) => return Err(error.into()),
        }
    }
    Ok(())
}
