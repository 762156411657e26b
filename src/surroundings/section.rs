//! The ground along a line through the site.

use geo::Coord;

use super::SurroundingsError;
use super::ground::{GroundGrid, Terrain};
use crate::assess::{Assessment, Sources};
use crate::crs::{CrsError, LocalFrame};
use crate::hazard::{Zone, ZoneClass, ZoneMap};
use crate::quantity::{AnnualChance, Elevation, Length, unit::meter};

/// A section through the site, from one edge of the square to the other.
///
/// It runs towards the water, which is taken to lie where the ground is lowest:
///
/// 1. along 36 bearings, ten degrees apart, the ground is looked at from the site to the edge of
///    the square, once for each cell of the grid;
/// 2. the bearing wins on which the ground comes within 0.1 m of the lowest ground of them all
///    in the shortest distance, so that a flat water surface is met by the shortest way;
/// 3. of equals the smaller bearing.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteSection {
    /// The direction of its end, degrees clockwise from north. It starts in the opposite one.
    pub bearing: f64,
    /// From start to end, so far apart as cells of the finest terrain model.
    pub points: Vec<SectionPoint>,
}

/// A point of the section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionPoint {
    /// How far it lies from the site: negative before it, positive behind it.
    pub along: Length,
    /// The ground, on the datum of the threshold; `None` where the terrain has no value.
    pub ground: Option<Elevation>,
    /// Whether a zone that the assessed event floods holds it.
    pub in_flooded_zone: bool,
}

/// How near to the lowest ground counts as down there, metres: a water surface in a terrain
/// model is flat to a few centimetres (a judgement, no source).
const LOW: f64 = 0.1;

/// Bearings that are tried.
const BEARINGS: u32 = 36;

/// More points than this along half a section tell a drawing nothing.
const MOST_POINTS: f64 = 600.0;

/// The section; `None` where the ground is not known along any bearing.
pub(super) fn through(
    terrain: &Terrain<'_>,
    grid: &GroundGrid,
    assessment: &Assessment<'_>,
    sources: &Sources,
) -> Result<Option<SiteSection>, SurroundingsError> {
    let cell = grid.cell.get::<meter>();
    let reach = cell * half(grid.side);
    let Some(bearing) = towards_water(terrain, reach, cell)? else {
        return Ok(None);
    };
    let length = to_edge(bearing, reach);
    let finest = terrain
        .finest_cell()
        .map_or(cell, |cell| cell.get::<meter>());
    let count = (length / finest).clamp(1.0, MOST_POINTS).floor();
    let steps = steps(count);
    let alongs: Vec<f64> = steps.map(|step| step / count * length).collect();
    let offsets: Vec<Coord<f64>> = alongs.iter().map(|along| at(bearing, *along)).collect();
    let flooded = Flooded::of(assessment, sources)?;
    let heights = terrain.heights(&offsets)?.into_iter();
    let points = alongs.iter().zip(offsets).zip(heights);
    let points = points.map(|((along, offset), ground)| SectionPoint {
        along: Length::new::<meter>(*along),
        ground,
        in_flooded_zone: flooded.holds(offset),
    });
    Ok(Some(SiteSection {
        bearing,
        points: points.collect(),
    }))
}

/// The bearing towards the lowest ground; `None` without any ground.
fn towards_water(
    terrain: &Terrain<'_>,
    reach: f64,
    step: f64,
) -> Result<Option<f64>, SurroundingsError> {
    let mut ways = Vec::new();
    for number in 0..BEARINGS {
        let bearing = f64::from(number) * 360.0 / f64::from(BEARINGS);
        let count = (to_edge(bearing, reach) / step).floor().max(1.0);
        let alongs: Vec<f64> = steps(count).filter(|along| *along >= 0.0).collect();
        let offsets: Vec<Coord<f64>> = alongs
            .iter()
            .map(|along| at(bearing, along * step))
            .collect();
        let heights = terrain.heights(&offsets)?.into_iter();
        let heights = heights.map(|ground| Some(ground?.height().get::<meter>()));
        ways.push((bearing, heights.collect::<Vec<_>>()));
    }
    Ok(lowest_way(&ways))
}

/// Steps 2 and 3: of ways with their heights from the site on.
fn lowest_way(ways: &[(f64, Vec<Option<f64>>)]) -> Option<f64> {
    let heights = ways.iter().flat_map(|(_, heights)| heights);
    let lowest = heights.flatten().copied().reduce(f64::min)?;
    let down = |heights: &[Option<f64>]| {
        let is_low = |height: &Option<f64>| height.is_some_and(|height| height <= lowest + LOW);
        heights.iter().position(is_low)
    };
    let ways = ways.iter();
    let ways = ways.filter_map(|(bearing, heights)| Some((bearing, down(heights)?)));
    // The first of equals, and bearings grow.
    ways.min_by_key(|(_, steps)| *steps)
        .map(|(bearing, _)| *bearing)
}

/// Whole numbers from `-count` to `count`.
#[allow(clippy::cast_possible_truncation)] // at most some hundred
fn steps(count: f64) -> impl Iterator<Item = f64> {
    let count = count as i32;
    (-count..=count).map(f64::from)
}

#[allow(clippy::cast_precision_loss)] // 160
fn half(side: usize) -> f64 {
    side as f64 / 2.0
}

/// The point so many metres along a bearing.
fn at(bearing: f64, along: f64) -> Coord<f64> {
    let (sine, cosine) = bearing.to_radians().sin_cos();
    Coord {
        x: along * sine,
        y: along * cosine,
    }
}

/// How far the edge of the square lies along a bearing, metres.
fn to_edge(bearing: f64, reach: f64) -> f64 {
    let way = at(bearing, 1.0);
    reach / way.x.abs().max(way.y.abs())
}

/// The zones that the assessed event floods.
struct Flooded<'a> {
    maps: Vec<(&'a ZoneMap, LocalFrame)>,
    event: AnnualChance,
}

impl<'a> Flooded<'a> {
    fn of(assessment: &Assessment<'_>, sources: &'a Sources) -> Result<Self, CrsError> {
        let mut maps = Vec::new();
        for map in &sources.zones {
            match map.frame(assessment.site.location) {
                Ok(frame) => maps.push((map, frame)),
                Err(CrsError::OutsideDomain { .. }) => {}
                Err(error) => return Err(error),
            }
        }
        Ok(Self {
            maps,
            event: assessment.method.event,
        })
    }

    /// A rarer flood covers the extent of a more frequent one.
    fn floods(&self, zone: &Zone) -> bool {
        let is_as_frequent =
            zone.annual_chance >= self.event || zone.annual_chance.same_event(self.event);
        is_as_frequent && (zone.class.is_inside() || zone.class == ZoneClass::Rare)
    }

    fn holds(&self, offset: Coord<f64>) -> bool {
        self.maps.iter().any(|(map, frame)| {
            let numbers = map.holding(frame.at(offset.x, offset.y));
            let mut zones = numbers.filter_map(|number| map.zone(u32::try_from(number).ok()?));
            zones.any(|zone| self.floods(zone))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shortest_way_down_wins_then_the_smaller_bearing() {
        let way = |heights: &[f64]| heights.iter().copied().map(Some).collect::<Vec<_>>();
        let far = (0.0, way(&[5.0, 4.0, 1.0]));
        let near = (10.0, way(&[5.0, 1.05, 1.05]));
        let other = (20.0, way(&[5.0, 1.0, 1.0]));
        assert_eq!(lowest_way(&[far.clone(), near, other]), Some(10.0));
        assert_eq!(lowest_way(&[(30.0, vec![None]), far]), Some(0.0));
        assert_eq!(lowest_way(&[(30.0, vec![None])]), None);
    }

    #[test]
    fn the_edge_is_farther_at_the_corner() {
        assert!((to_edge(90.0, 100.0) - 100.0).abs() < 1e-9);
        assert!((to_edge(45.0, 100.0) - 141.421_356).abs() < 1e-5);
    }
}
