//! The level from the edge of the zone at a place.

use geo::Coord;

use super::edge::EdgePoint;
use super::fit::{Fit, fit, is_on_terrain};
use super::scatter::Scatter;
use super::shore::{Water, floods};
use super::{BoundaryError, BoundaryRefusal};
use crate::hazard::{Zone, ZoneClass, ZoneMap};
use crate::level::{Candidate, LevelSource};
use crate::quantity::{AnnualChance, Elevation, Length, unit::foot, unit::meter};
use crate::site::Location;
use crate::terrain::{GroundPlane, Terrain, TerrainError};

/// Samples that a level is made of: measured on Houston and Muncy (tests/validation/boundary.rs),
/// 400 to 800 do about as well.
pub(super) const SAMPLES: usize = 600;

/// The weight of a sample falls to 1/e over this share of the farthest one's distance; measured
/// on Houston and Muncy with the number of samples.
const NEARNESS: f64 = 0.4;

/// All within so many times the distance of the nearest sample are taken too, so that a place
/// in the middle of a wide valley sees both banks.
pub(super) const BOTH_BANKS: f64 = 2.0;

/// And no more than this.
pub(super) const MOST_SAMPLES: usize = 1500;

/// Fewer are refused: two stretches of edge.
const FEWEST_SAMPLES: usize = 50;

/// How far the edge is looked for, metres: half as far again as the farthest sample in the
/// wide valley at Muncy.
pub(super) const RADIUS: f64 = 1500.0;

/// Distance between two samples: a cell of the terrain, but no less than that of Houston's,
/// metres, so that a fine terrain does not shrink the neighbourhood to one bank.
const CLOSEST: f64 = 3.0;

/// Stretches may scatter by half the interval of contours every 2.5 m, metres: banks that
/// differ by more than half the contour interval have no level in common (FEMA 265, page V-3),
/// and maps that approximate zones were drawn on mostly have intervals of five to ten feet
/// (from memory).
const ACCEPTED_SCATTER: f64 = 1.25;

/// And the samples by no more than this (scaled median deviation), metres. Beyond it the edge
/// was not drawn on this terrain: the median error at Muncy doubles over the range of spreads
/// that are met there, 0.2 to 1.2 m; at Houston the spread is 0.47 m at most.
const ACCEPTED_SPREAD: f64 = 0.6;

/// What the edge of a zone says about the flood level at a place.
#[derive(Clone, Debug, PartialEq)]
pub enum BoundaryAnswer {
    /// No zone of the event there has an edge that would be a shore.
    NoZone,
    /// The level.
    Level(Box<BoundaryLevel>),
    /// There is a zone, but its edge gives no level.
    Refused(BoundaryRefusal),
}

/// A level from the edge of a zone, with what it was made of.
#[derive(Clone, Debug, PartialEq)]
pub struct BoundaryLevel {
    /// The level with its standard deviation.
    pub candidate: Candidate,
    /// Points of the edge that it is made of.
    pub samples: usize,
    /// Distance of the nearest of them from the place.
    pub nearest: Length,
    /// Distance of the farthest.
    pub farthest: Length,
    /// How far the zone had to be moved to lie best on the terrain: east, north.
    pub shift: [Length; 2],
    /// Scaled median deviation of the samples about the level.
    pub spread: Length,
    /// Level of the lowest stretch of the edge.
    pub lowest: Elevation,
    /// Level of the highest stretch of the edge.
    pub highest: Elevation,
}

/// The flood level at a place from the edge of its zone, read on the terrain.
///
/// 1. *Water.* The worst zone of the event that holds the place, and every zone of the same
///    or a more frequent event that touches it, are one water. Sheet flow and wave zones have
///    an edge for other reasons and are not asked.
/// 2. *Shore.* The edge is sampled every terrain cell (three metres at least) within 1.5 km.
///    Left out are common edges of two flooded zones, edges beside shallow, protected or
///    unknown areas and beside gaps of a map that otherwise names the land, and what lies
///    within three cells of the rim of the terrain or of a void.
/// 3. *Neighbourhood.* The nearest 600 samples, and all within twice the distance of the
///    nearest; near ones count more; fewer than 50 are refused.
/// 4. *Level.* Level and shift of the map against the terrain are fitted together, robustly,
///    and steep ground counts less.
/// 5. *Banks.* Stretches of 25 samples are compared. Where they scatter about the level by
///    more than 1.25 m (root mean square), half the interval of contours every 2.5 m, the
///    banks disagree and the level is refused (FEMA 265, page V-3). So it is where the
///    samples themselves spread by more than 0.6 m (scaled median deviation): such an edge
///    was not drawn on this terrain.
/// 6. *Uncertainty.* From the standard error of the fit, the scatter of the stretches beyond
///    the samples' own, the distance, and the rounding of the terrain.
///
/// Measured on Houston and Muncy (tests/validation/boundary.rs, with the constants' origin).
/// `terrain_sd` is a standard deviation of the terrain that the user states; it is added by
/// root-sum-square.
///
/// `map` has to hold the neighbours of the zone as well: all zones within 1.5 km.
///
/// # Errors
/// [`BoundaryError`] where the terrain cannot be read or the place has no coordinates in the
/// layer.
pub fn boundary_level(
    map: &ZoneMap,
    terrain: &Terrain,
    event: AnnualChance,
    location: Location,
    terrain_sd: Option<Length>,
) -> Result<BoundaryAnswer, BoundaryError> {
    let Some((number, zone)) = zone_of(map, event, location)? else {
        return Ok(BoundaryAnswer::NoZone);
    };
    let Some(ground) = terrain.plane_at(location)? else {
        return Ok(BoundaryAnswer::Refused(BoundaryRefusal::NoGround));
    };
    let step = step_of(ground.cell());
    let water = Water::new(map, map.frame(location)?, zone.annual_chance);
    let points = nearest(&ground, water.shore(number, step, RADIUS), step)?;
    let too_few = |found| {
        Ok(BoundaryAnswer::Refused(BoundaryRefusal::TooFewSamples {
            found,
            needed: FEWEST_SAMPLES,
            within: Length::new::<meter>(RADIUS),
        }))
    };
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        return too_few(0);
    };
    if points.len() < FEWEST_SAMPLES {
        return too_few(points.len());
    }
    let places: Vec<Coord<f64>> = points.iter().map(|point| point.at).collect();
    let near = |point: &EdgePoint| (-point.distance / (NEARNESS * last.distance)).exp();
    let weights: Vec<f64> = points.iter().map(near).collect();
    let weighed: Vec<_> = places
        .iter()
        .copied()
        .zip(weights.iter().copied())
        .collect();
    let Some(fit) = fit(&ground, &weighed, step)? else {
        return too_few(0);
    };
    let weighed: Vec<_> = points.iter().copied().zip(weights).collect();
    let scatter = Scatter::new(&weighed, &fit);
    let [lowest, highest] = scatter
        .range
        .map(|above| ground.elevation(fit.level + above));
    if scatter.stretches > ACCEPTED_SCATTER {
        return Ok(BoundaryAnswer::Refused(BoundaryRefusal::BanksDisagree {
            lowest,
            highest,
            scatter: Length::new::<meter>(scatter.stretches),
            accepted: Length::new::<meter>(ACCEPTED_SCATTER),
        }));
    }
    if scatter.samples > ACCEPTED_SPREAD {
        return Ok(BoundaryAnswer::Refused(BoundaryRefusal::SamplesDisagree {
            spread: Length::new::<meter>(scatter.samples),
            accepted: Length::new::<meter>(ACCEPTED_SPREAD),
        }));
    }
    let rounding = rounding(&ground, &places)?;
    let sd = Length::new::<meter>(scatter.sd(&fit, mean_distance(&weighed), rounding));
    let sd = terrain_sd.map_or(sd, |terrain| sd.hypot(terrain));
    Ok(BoundaryAnswer::Level(Box::new(BoundaryLevel {
        candidate: Candidate {
            source: LevelSource::BoundaryOnTerrain,
            elevation: ground.elevation(fit.level),
            sd: Some(sd),
            chance: event,
            how: how(&points, &fit, last.distance),
            reference: format!(
                "edge of zone {} ({}) on {}; FEMA 265, pages V-3 to V-5",
                zone.title(),
                zone.record(),
                ground.source()
            ),
        },
        samples: points.len(),
        nearest: Length::new::<meter>(first.distance),
        farthest: Length::new::<meter>(last.distance),
        shift: [fit.shift.x, fit.shift.y].map(Length::new::<meter>),
        spread: Length::new::<meter>(scatter.samples),
        lowest,
        highest,
    })))
}

/// Distance between two samples on a terrain of cells of such a size, metres.
pub(super) fn step_of(cell: Length) -> f64 {
    cell.get::<meter>().max(CLOSEST)
}

fn mean_distance(points: &[(EdgePoint, f64)]) -> f64 {
    let weights: f64 = points.iter().map(|(_, weight)| weight).sum();
    let distances = points.iter().map(|(point, weight)| weight * point.distance);
    distances.sum::<f64>() / weights
}

fn how(points: &[EdgePoint], fit: &Fit, farthest: f64) -> String {
    let farthest = Length::new::<meter>(farthest);
    format!(
        "ground along the edge of the zone, {} samples within {:.0} m ({:.0} ft), the zone moved \
         by {:.1} m to lie best on the terrain; standard deviation from their spread",
        points.len(),
        farthest.get::<meter>(),
        farthest.get::<foot>(),
        fit.shift.x.hypot(fit.shift.y)
    )
}

/// The worst zone of the event at a place whose edge is a shore, with its position in the map.
pub(super) fn zone_of(
    map: &ZoneMap,
    event: AnnualChance,
    location: Location,
) -> Result<Option<(usize, &Zone)>, BoundaryError> {
    let here = map.at(location)?;
    let zone = here
        .zones
        .into_iter()
        .find(|zone| floods(zone.class) && zone.annual_chance.same_event(event));
    let Some(zone) =
        zone.filter(|zone| !matches!(zone.class, ZoneClass::SheetFlow | ZoneClass::CoastalWave))
    else {
        return Ok(None);
    };
    let number = map.zones().position(|(other, _)| std::ptr::eq(other, zone));
    Ok(number.map(|number| (number, zone)))
}

/// The samples of the neighbourhood: those on the terrain, the nearest first.
fn nearest(
    ground: &GroundPlane<'_>,
    shore: Vec<EdgePoint>,
    step: f64,
) -> Result<Vec<EdgePoint>, TerrainError> {
    let mut taken: Vec<EdgePoint> = Vec::with_capacity(SAMPLES);
    for point in shore {
        let reach = taken
            .first()
            .map_or(0.0, |first| BOTH_BANKS * first.distance);
        let is_enough = taken.len() >= SAMPLES && point.distance > reach;
        if is_enough || taken.len() >= MOST_SAMPLES {
            break;
        }
        if is_on_terrain(ground, point.at, step)? {
            taken.push(point);
        }
    }
    Ok(taken)
}

/// The step that the terrain's heights are rounded to, metres: one unit or a tenth of it,
/// where every cell under the samples is a multiple of that; zero where they are not.
fn rounding(ground: &GroundPlane<'_>, points: &[Coord<f64>]) -> Result<f64, TerrainError> {
    let mut steps = vec![1.0, 0.1];
    let mut unit = 0.0;
    for point in points {
        if let Some((value, length)) = ground.stored(point.x, point.y)? {
            unit = length.get::<meter>();
            steps.retain(|step| {
                let multiple: f64 = value / step;
                // Single precision keeps seven digits.
                (multiple - multiple.round()).abs() < 1e-3
            });
        }
    }
    Ok(steps.first().map_or(0.0, |step| step * unit))
}
