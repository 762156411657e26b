//! Steps 1 to 3: what maps and terrain say at a place, before anything is concluded from it.

use super::{AssessError, Detail, Method, Sources};
use crate::crs::CrsError;
use crate::hazard::ZonesHere;
use crate::level::{EdgeUse, GradeReach, MapLevels, MapQuestion, map_levels};
use crate::site::{Footprint, Location};
use crate::terrain::{Gap, Grade, Ground};

/// What maps and terrain say at a place, each on its own datum.
///
/// Reading is apart from concluding so that many places can be read in the order of the
/// terrain's tiles and answered in the order of the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings<'maps> {
    /// The zones that hold the place, the worst first.
    pub zones: ZonesHere<'maps>,
    /// The ground, or why there is none; `None` where no terrain was given.
    pub ground: Option<Result<Ground, Gap>>,
    /// Lowest and highest ground around, and which ground counts.
    pub grade: Option<(Grade, GradeReach)>,
    /// Levels of rasters, lines and the edge of the zone.
    pub levels: MapLevels,
}

/// Reads maps and terrain at a place. `outline` is that of the building, where it is stated
/// and stands there.
///
/// With [`Detail::Figures`] nothing is read that no figure needs: the edge of the zone where
/// another map has a level, and the ground around a place of which no map says anything.
///
/// # Errors
/// [`AssessError`] where a source cannot be read.
pub fn read_place<'maps>(
    location: Location,
    outline: Option<&Footprint>,
    sources: &'maps Sources,
    method: &Method,
) -> Result<Readings<'maps>, AssessError> {
    let zones = zones(location, sources)?;
    let terrain = &sources.terrain;
    let ground = match terrain.dems() {
        [] => None,
        _ => Some(terrain.ground_at(location)?),
    };
    let levels = map_levels(&MapQuestion {
        location,
        event: method.event,
        zones: &zones.zones,
        zone_maps: &sources.zones,
        maps: &sources.levels,
        terrain,
        terrain_sd: method.uncertainty.terrain_sd(),
        ground: match &ground {
            Some(Ok(ground)) => Ok(ground),
            Some(Err(gap)) => Err(*gap),
            None => Err(Gap::Outside),
        },
        edge: match method.detail {
            Detail::Full => EdgeUse::Always,
            Detail::Figures => EdgeUse::IfNothingElse,
        },
    })?;
    let unmapped = zones.zones.is_empty() && !sources.zones.is_empty() && levels.is_empty();
    let grade = if terrain.dems().is_empty() || (method.detail == Detail::Figures && unmapped) {
        None
    } else {
        let radius = method.grade_radius;
        let (found, reach) = match outline {
            Some(footprint) => (terrain.grade_along(footprint)?, GradeReach::Outline),
            None => (
                terrain.grade_around(location, radius)?,
                GradeReach::Radius(radius),
            ),
        };
        found.ok().map(|grade| (grade, reach))
    };
    Ok(Readings {
        zones,
        ground,
        grade,
        levels,
    })
}

fn zones(location: Location, sources: &Sources) -> Result<ZonesHere<'_>, AssessError> {
    let mut joined = ZonesHere::join([]);
    for map in &sources.zones {
        match map.at(location) {
            Ok(here) => joined = ZonesHere::join([joined, here]),
            // What a layer's coordinates cannot express, its polygons do not hold.
            Err(CrsError::OutsideDomain { .. }) => {}
            Err(error) => return Err(error.into()),
        }
    }
    Ok(joined)
}
