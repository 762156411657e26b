//! How well the level is known, from the spread of its own samples.

use std::collections::BTreeMap;

use super::edge::EdgePoint;
use super::fit::Fit;
use super::statistics::{spread, weighted_median};

/// A stretch counts from so many samples on.
const SMALLEST_STRETCH: f64 = 8.0;

/// What no number of samples takes away, metres: the accuracy of the best-known shared part
/// of zone and terrain. Measured on Houston, where it is small because zone and terrain come
/// from about the same survey; a terrain's own standard deviation is for the user to state.
const FLOOR: f64 = 0.015;

/// Factor on the standard error of the fit; measured on Houston.
const OF_THE_FIT: f64 = 0.2;

/// Factor on the scatter of the stretches beyond the samples' own; measured on Muncy.
const OF_THE_STRETCHES: f64 = 0.75;

/// What the level may change on the way from the edge to the place, metres a metre: the slope
/// of the water surface is not known. Measured on Houston, whose water falls by 0.0007 (1 %,
/// end to end); its 0.2 % flood, far from its edges, holds with it too.
const FALL: f64 = 0.000_42;

/// Standard deviation of a level on a terrain of rounded heights, in steps of the rounding:
/// rounding alone would be 1/√12 = 0.29, but a terrain kept in whole feet is made no better
/// than that. Measured on Muncy.
const OF_THE_ROUNDING: f64 = 1.5;

/// How the stretches of the edge stand to the level.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Scatter {
    /// Scaled median deviation of the samples, metres.
    pub(super) samples: f64,
    /// Root mean square of the stretches' levels about the level, metres; near ones count more.
    pub(super) stretches: f64,
    /// The lowest and the highest stretch above the level, metres.
    pub(super) range: [f64; 2],
}

impl Scatter {
    /// `points` with the weight of their nearness, in the order of the fit.
    pub(super) fn new(points: &[(EdgePoint, f64)], fit: &Fit) -> Self {
        let mut stretches: BTreeMap<usize, Stretch> = BTreeMap::new();
        for ((point, nearness), left_over) in points.iter().zip(&fit.left_over) {
            if left_over.1 > 0.0 {
                let stretch = stretches.entry(point.stretch).or_default();
                stretch.left_over.push(*left_over);
                stretch.nearness += nearness;
            }
        }
        let mut scatter = Self {
            samples: spread(fit.left_over.clone()),
            stretches: 0.0,
            range: [0.0, 0.0],
        };
        let (mut squares, mut weights) = (0.0, 0.0);
        for stretch in stretches.into_values() {
            #[allow(clippy::cast_precision_loss)] // a few dozen
            let count = stretch.left_over.len() as f64;
            if count < SMALLEST_STRETCH {
                continue;
            }
            let weight = stretch.nearness / count;
            if let Some(level) = weighted_median(stretch.left_over) {
                squares += weight * level * level;
                weights += weight;
                scatter.range[0] = scatter.range[0].min(level);
                scatter.range[1] = scatter.range[1].max(level);
            }
        }
        if weights > 0.0 {
            scatter.stretches = (squares / weights).sqrt();
        }
        scatter
    }

    /// Standard deviation of the level, metres, by root-sum-square of
    /// 1. a floor that samples do not take away;
    /// 2. the standard error of the fit;
    /// 3. what the stretches scatter beyond the samples' own spread: such a difference goes
    ///    with the place and does not average out;
    /// 4. the fall of the water between the edge and the place, over the samples' mean
    ///    distance;
    /// 5. the rounding of the terrain.
    pub(super) fn sd(&self, fit: &Fit, distance: f64, rounding: f64) -> f64 {
        let beyond = (self.stretches.powi(2) - self.samples.powi(2)).max(0.0);
        let squares = [
            FLOOR.powi(2),
            (OF_THE_FIT * fit.standard_error).powi(2),
            OF_THE_STRETCHES.powi(2) * beyond,
            (FALL * distance).powi(2),
            (OF_THE_ROUNDING * rounding).powi(2),
        ];
        squares.iter().sum::<f64>().sqrt()
    }
}

/// The samples of one stretch.
#[derive(Default)]
struct Stretch {
    left_over: Vec<(f64, f64)>,
    nearness: f64,
}
