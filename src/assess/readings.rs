//! Steps 1 to 3: what maps and terrain say at a place, before anything is concluded from it.

use super::{AssessError, Detail, Method, Sources};
use crate::barrier::exceeds;
use crate::crs::CrsError;
use crate::hazard::{Zone, ZoneClass, ZonesHere};
use crate::level::{EdgeUse, GradeReach, MapLevels, MapQuestion, map_levels};
use crate::quantity::{Elevation, Length};
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

/// What is read at a place.
#[derive(Clone, Copy)]
pub struct Asked<'a> {
    /// The place.
    pub location: Location,
    /// The outline of the building, where it is stated and stands there.
    pub outline: Option<&'a Footprint>,
    /// The one sill that matters there, where verdict and cautions are all that is asked of
    /// the ground around: then it is not read where the ground at the place decides already.
    pub sill: Option<SillAsked>,
}

/// A sill, and what matters of the ground around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SillAsked {
    /// The sill.
    pub elevation: Elevation,
    /// Water over the ground that the wall takes; `None` where no limit is known, or where the
    /// rule may put the design level below the flood level.
    pub wall: Option<Length>,
}

/// Reads maps and terrain at a place.
///
/// With [`Detail::Figures`] nothing is read that no figure needs: the edge of the zone where
/// another map has a level, and the ground around a place of which no map says anything.
///
/// # Errors
/// [`AssessError`] where a source cannot be read.
pub fn read_place<'maps>(
    asked: Asked<'_>,
    sources: &'maps Sources,
    method: &Method,
) -> Result<Readings<'maps>, AssessError> {
    let zones = zones(asked.location, sources)?;
    let figures = method.detail == Detail::Figures;
    let mut readings = Readings {
        zones,
        ..Readings::default()
    };
    readings.ground = match sources.terrain.dems() {
        [] => None,
        // With the ground around it one transformation serves both.
        _ if !figures && asked.outline.is_none() => {
            let around = sources
                .terrain
                .around(asked.location, method.grade_radius)?;
            let reach = GradeReach::Radius(method.grade_radius);
            readings.grade = around.grade.ok().map(|grade| (grade, reach));
            Some(around.ground)
        }
        _ => Some(sources.terrain.ground_at(asked.location)?),
    };
    readings.levels = levels(&asked, &readings, sources, method)?;
    if readings.grade.is_none() && readings.ground.is_some() {
        readings.grade = grade(&asked, &readings, sources, method)?;
    }
    Ok(readings)
}

fn levels(
    asked: &Asked<'_>,
    readings: &Readings<'_>,
    sources: &Sources,
    method: &Method,
) -> Result<MapLevels, AssessError> {
    Ok(map_levels(&MapQuestion {
        location: asked.location,
        event: method.event,
        zones: &readings.zones.zones,
        zone_maps: &sources.zones,
        maps: &sources.levels,
        terrain: &sources.terrain,
        terrain_sd: method.uncertainty.terrain_sd(),
        ground: match &readings.ground {
            Some(Ok(ground)) => Ok(ground),
            Some(Err(gap)) => Err(*gap),
            None => Err(Gap::Outside),
        },
        edge: match method.detail {
            Detail::Full => EdgeUse::Always,
            Detail::Figures => EdgeUse::IfNothingElse,
        },
    })?)
}

/// The ground around a place, as far as it is needed.
fn grade(
    asked: &Asked<'_>,
    readings: &Readings<'_>,
    sources: &Sources,
    method: &Method,
) -> Result<Option<(Grade, GradeReach)>, AssessError> {
    let terrain = &sources.terrain;
    if let Some(footprint) = asked.outline {
        let found = terrain.grade_along(footprint)?.ok();
        return Ok(found.map(|grade| (grade, GradeReach::Outline)));
    }
    if method.detail == Detail::Figures {
        let no_polygon = readings.zones.zones.is_empty() && !sources.zones.is_empty();
        if no_polygon && readings.levels.is_empty() {
            return Ok(None);
        }
        if let Some(grade) = decided_by_ground(asked, readings, method) {
            return Ok(Some(grade));
        }
    }
    let found = terrain.grade_around(asked.location, method.grade_radius)?;
    let reach = GradeReach::Radius(method.grade_radius);
    Ok(found.ok().map(|grade| (grade, reach)))
}

/// The ground at the place itself as all that is looked at, where the lowest ground around
/// it, which is not higher, would change neither verdict nor cautions: the sill is not below
/// it, and the water over it is either none by the map or more than the wall takes anyway.
fn decided_by_ground(
    asked: &Asked<'_>,
    readings: &Readings<'_>,
    method: &Method,
) -> Option<(Grade, GradeReach)> {
    let (sill, ground) = (asked.sill?, readings.ground.as_ref()?.as_ref().ok()?);
    if sill.elevation.above(ground.elevation).ok()? < Length::default() {
        return None;
    }
    let zones = &readings.zones.zones;
    let from_ground = |zone: &&Zone| zone.class == ZoneClass::SheetFlow;
    if !readings.levels.is_empty() || zones.iter().any(from_ground) {
        return None;
    }
    let of_event = |zone: &&&Zone| zone.annual_chance.same_event(method.event);
    let flooded = zones.iter().filter(|zone| zone.class.is_inside());
    for zone in flooded.filter(of_event) {
        if let Some(level) = zone.level {
            let water = level.above(ground.elevation).ok()?;
            if !exceeds(water, sill.wall?) {
                return None;
            }
        }
    }
    let grade = Grade {
        lowest: ground.elevation,
        highest: ground.elevation,
        samples: 1,
        without_value: 0,
        source: ground.source.clone(),
    };
    Some((grade, GradeReach::Radius(Length::default())))
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
