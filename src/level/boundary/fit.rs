//! One level through the ground along a shore.

use super::statistics::{MAD_TO_SD, weighted_median};
use super::symmetric::inverse;
use crate::terrain::{GroundPlane, TerrainError};
use geo::Coord;

/// Standard deviation of a sample on flat ground, metres: what a zone's edge and a terrain
/// leave open where nothing is steep; for scale: the Geological Survey asks of lidar terrain a
/// root-mean-square error of 0.1 m (quality levels 1 and 2, from memory). Measured on
/// Houston and Muncy (tests/validation/boundary.rs): 0.1 to 0.3 m do about as well.
const ON_THE_FLAT: f64 = 0.2;

/// Standard deviation of a sample's position, in steps along the edge: an edge drawn from
/// cells lies anywhere between two cell centres (1/√12 of a step to either side), and digitised
/// or smoothed by as much again. Measured on Houston and Muncy: 0.15 to 1 do about as well.
const POSITION: f64 = 0.6;

/// Standard deviation of the map's shift against the terrain along each axis, metres: 90 % of
/// well-defined points of a map at 1:12 000 lie within 1/30 inch, 10.2 m (National Map
/// Accuracy Standards, 1947, from memory), which is 2.146 standard deviations of one axis.
const SHIFT: f64 = 4.7;

/// Neighbouring samples that say the same thing: as many count as one. Measured on Houston.
const CORRELATED: f64 = 8.0;

/// Tukey's biweight leaves out what lies farther off than this many standard deviations;
/// measured on Houston and Muncy: 2 to 5 do about as well.
const CUT: f64 = 3.0;

/// The fit does not call more than this many times the expected spread normal.
const WIDEST: f64 = 4.0;

/// Rounds of the fit; the first ones pull outliers in without leaving them out, so that the
/// start does not decide.
const ROUNDS: usize = 10;
const GENTLE_ROUNDS: usize = 4;

/// A step of the shift within one round, in steps along the edge: the ground is straight
/// over no more than that.
const STRIDE: f64 = 0.7;

/// The slope is taken over so many steps to either side: nearer, the slope goes with the
/// error of the sample (the top of a bank is flat and too high).
const REACH: f64 = 3.0;

/// The level with what it leaves over.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fit {
    /// Metres on the terrain's datum.
    pub(super) level: f64,
    /// Its standard error from sampling and from the shift, metres.
    pub(super) standard_error: f64,
    /// How far the zone had to be moved to lie best on the terrain, metres east and north.
    pub(super) shift: Coord<f64>,
    /// Ground above the level at each sample (moved by the shift), with its weight; a sample
    /// that left the terrain has a weight of zero.
    pub(super) left_over: Vec<(f64, f64)>,
}

/// A sample of the ground: height and slope, metres and metres a metre.
#[derive(Clone, Copy)]
struct Sample {
    height: f64,
    slope: Coord<f64>,
}

/// Fits level and shift to the ground at `points` (metres from the place), each with the
/// weight of its nearness.
///
/// The zone's edge is where the water met the ground, but the map may lie shifted against the
/// terrain: then the ground is too high on one bank and too low on the other. So
/// `ground(point + shift) = level + error` is solved for level and shift together, by
/// Gauss-Newton with robust weights:
///
/// 1. error of a sample: 0.2 m, and 0.6 steps times the slope of the ground there;
/// 2. weights by Huber in the first four rounds, then by Tukey's biweight;
/// 3. the shift is held to zero by its standard deviation of 4.7 m along each axis.
///
/// `None` where fewer than three samples are on the terrain.
pub(super) fn fit(
    ground: &GroundPlane<'_>,
    points: &[(Coord<f64>, f64)],
    step: f64,
) -> Result<Option<Fit>, TerrainError> {
    let mut shift = Coord { x: 0.0, y: 0.0 };
    let mut level = None;
    let mut standard_error = 0.0;
    for round in 0..=ROUNDS {
        let mut samples = Vec::with_capacity(points.len());
        for (point, _) in points {
            samples.push(sample(ground, *point + shift, step)?);
        }
        let weighed: Vec<Option<Weighed>> = samples
            .into_iter()
            .zip(points)
            .map(|(sample, (_, nearness))| {
                sample.map(|sample| Weighed {
                    sample,
                    error: error(&sample, step),
                    nearness: *nearness,
                })
            })
            .collect();
        let known: Vec<Weighed> = weighed.iter().flatten().copied().collect();
        if known.len() < 3 {
            return Ok(None);
        }
        let heights = known.iter().map(|one| (one.sample.height, one.weight()));
        let Some(now) = level.or_else(|| weighted_median(heights.collect())) else {
            return Ok(None);
        };
        if round == ROUNDS {
            let left_over = weighed
                .iter()
                .map(|one| one.map_or((0.0, 0.0), |one| (one.sample.height - now, one.weight())));
            return Ok(Some(Fit {
                level: now,
                standard_error,
                shift,
                left_over: left_over.collect(),
            }));
        }
        let solved = solve(&known, now, shift, round < GENTLE_ROUNDS);
        let Some((solved, move_by, error)) = solved else {
            return Ok(None);
        };
        let stride = STRIDE * step;
        shift.x += move_by.x.clamp(-stride, stride);
        shift.y += move_by.y.clamp(-stride, stride);
        level = Some(solved);
        standard_error = error;
    }
    Ok(None)
}

/// A sample with what it weighs.
#[derive(Clone, Copy)]
struct Weighed {
    sample: Sample,
    /// Expected standard deviation, metres.
    error: f64,
    /// Weight by distance from the place.
    nearness: f64,
}

impl Weighed {
    fn weight(&self) -> f64 {
        self.nearness / self.error.powi(2)
    }

    /// Expected deviations above the level.
    fn off(&self, level: f64) -> f64 {
        ((self.sample.height - level) / self.error).abs()
    }
}

fn sample(
    ground: &GroundPlane<'_>,
    at: Coord<f64>,
    step: f64,
) -> Result<Option<Sample>, TerrainError> {
    let reach = REACH * step;
    let found = [
        (0.0, 0.0),
        (reach, 0.0),
        (-reach, 0.0),
        (0.0, reach),
        (0.0, -reach),
    ];
    let mut heights = [0.0; 5];
    for (height, (east, north)) in heights.iter_mut().zip(found) {
        let Some(metres) = ground.metres(at.x + east, at.y + north)? else {
            return Ok(None);
        };
        *height = metres;
    }
    let [height, east, west, north, south] = heights;
    Ok(Some(Sample {
        height,
        slope: Coord {
            x: (east - west) / (2.0 * reach),
            y: (north - south) / (2.0 * reach),
        },
    }))
}

/// Whether the ground is known around a point as far as a fit may look.
pub(super) fn is_on_terrain(
    ground: &GroundPlane<'_>,
    at: Coord<f64>,
    step: f64,
) -> Result<bool, TerrainError> {
    Ok(sample(ground, at, step)?.is_some())
}

fn error(sample: &Sample, step: f64) -> f64 {
    ON_THE_FLAT.hypot(POSITION * step * sample.slope.x.hypot(sample.slope.y))
}

/// One round: the level, by how much to move the zone, and the level's standard error.
fn solve(
    samples: &[Weighed],
    level: f64,
    shift: Coord<f64>,
    gentle: bool,
) -> Option<(f64, Coord<f64>, f64)> {
    let spread = samples.iter().map(|one| (one.off(level), one.nearness));
    let spread = MAD_TO_SD * weighted_median(spread.collect())?;
    let spread = spread.clamp(1.0, if gentle { f64::INFINITY } else { WIDEST });
    // Normal equations of (level, shift east, shift north).
    let mut matrix = [[0.0; 3]; 3];
    let mut right = [0.0; 3];
    for one in samples {
        let off = one.off(level) / spread;
        let trust = if gentle {
            1.0 / off.max(1.0)
        } else {
            (1.0 - (off / CUT).powi(2)).max(0.0).powi(2)
        };
        let weight = trust * one.weight() / (spread.powi(2) * CORRELATED);
        let sample = one.sample;
        let row = [1.0, -sample.slope.x, -sample.slope.y];
        for (line, one) in matrix.iter_mut().zip(row) {
            for (cell, two) in line.iter_mut().zip(row) {
                *cell += weight * one * two;
            }
        }
        for (right, one) in right.iter_mut().zip(row) {
            *right += weight * one * sample.height;
        }
    }
    let held = SHIFT.powi(-2);
    matrix[1][1] += held;
    matrix[2][2] += held;
    right[1] -= held * shift.x;
    right[2] -= held * shift.y;
    let inverse = inverse(&matrix)?;
    let product = |row: [f64; 3]| row[0] * right[0] + row[1] * right[1] + row[2] * right[2];
    let [first, second, third] = inverse;
    Some((
        product(first),
        Coord {
            x: product(second),
            y: product(third),
        },
        first[0].sqrt(),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shifted_zone_on_two_banks_gives_the_level_between_them() {
        // Banks of one in two, the zone one metre too far east: the east bank reads half a
        // metre too high, the west bank half a metre too low.
        let bank = |slope: f64| Weighed {
            sample: Sample {
                height: 10.0 + slope,
                slope: Coord { x: slope, y: 0.0 },
            },
            error: 0.3,
            nearness: 1.0,
        };
        let mut samples = vec![bank(0.5); 150];
        samples.extend(vec![bank(-0.5); 150]);
        let (level, move_by, _) = solve(&samples, 10.0, Coord { x: 0.0, y: 0.0 }, false).unwrap();
        assert!((level - 10.0).abs() < 1e-9, "{level}");
        assert!((move_by.x + 1.0).abs() < 0.05, "{move_by:?}");
    }
}
