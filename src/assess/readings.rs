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
#[derive(Clone, Debug, Default, PartialEq)]
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
    // Of a place that no polygon holds the ground around is of use only where another map
    // speaks, which is not known yet.
    let unmapped = zones.zones.is_empty() && !sources.zones.is_empty();
    let later = method.detail == Detail::Figures && unmapped;
    let (ground, mut grade) = match (terrain.dems(), outline) {
        ([], _) => (None, None),
        (_, Some(footprint)) => {
            let grade = terrain.grade_along(footprint)?;
            let grade = grade.ok().map(|grade| (grade, GradeReach::Outline));
            (Some(terrain.ground_at(location)?), grade)
        }
        (_, None) if later => (Some(terrain.ground_at(location)?), None),
        (_, None) => {
            let around = terrain.around(location, method.grade_radius)?;
            let reach = GradeReach::Radius(method.grade_radius);
            let grade = around.grade.ok().map(|grade| (grade, reach));
            (Some(around.ground), grade)
        }
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
    if later && outline.is_none() && ground.is_some() && !levels.is_empty() {
        let found = terrain.grade_around(location, method.grade_radius)?;
        let reach = GradeReach::Radius(method.grade_radius);
        grade = found.ok().map(|grade| (grade, reach));
    }
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
