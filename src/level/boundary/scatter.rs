//! How well the level is known, from the spread of its own samples.

use std::collections::BTreeMap;

use super::edge::EdgePoint;
use super::fit::Fit;
use super::statistics::{spread, weighted_median};

/// A stretch counts from so many samples on.
const SMALLEST_STRETCH: usize = 8;

/// What no number of samples takes away, metres: a third of the root-mean-square error that
/// the Geological Survey asks of lidar terrain (0.1 m, quality levels 1 and 2, from memory),
/// because zone and terrain share most of it. Measured on Houston.
const FLOOR: f64 = 0.03;

/// Factor on the standard error of the fit; measured on Houston.
const OF_THE_FIT: f64 = 0.75;

/// What the level may change on the way from the edge to the place, metres a metre of the
/// farthest sample's distance: the slope of the water surface is not known. Measured on
/// Houston, whose water falls by 0.0007, and held against its 0.2 % flood.
const FALL: f64 = 0.000_18;

/// Standard deviation of a level on a terrain of rounded heights, in steps of the rounding:
/// rounding alone would be 1/√12 = 0.29, but a terrain kept in whole feet is made no better
/// than that. Measured on Muncy.
const OF_THE_ROUNDING: f64 = 1.75;

/// How the stretches of the edge stand to the level.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Scatter {
    /// Scaled median deviation of the samples, metres.
    pub(super) samples: f64,
    /// Root mean square of the stretches' levels about the level, metres.
    pub(super) stretches: f64,
    /// The lowest and the highest stretch above the level, metres.
    pub(super) range: [f64; 2],
}

impl Scatter {
    pub(super) fn new(points: &[EdgePoint], fit: &Fit) -> Self {
        let mut stretches: BTreeMap<usize, Vec<(f64, f64)>> = BTreeMap::new();
        for (point, left_over) in points.iter().zip(&fit.left_over) {
            if left_over.1 > 0.0 {
                stretches.entry(point.stretch).or_default().push(*left_over);
            }
        }
        let levels: Vec<f64> = stretches
            .into_values()
            .filter(|stretch| stretch.len() >= SMALLEST_STRETCH)
            .filter_map(weighted_median)
            .collect();
        #[allow(clippy::cast_precision_loss)] // a few dozen
        let count = levels.len().max(1) as f64;
        let squares: f64 = levels.iter().map(|level| level * level).sum();
        Self {
            samples: spread(fit.left_over.clone()),
            stretches: (squares / count).sqrt(),
            range: [
                levels.iter().copied().fold(0.0, f64::min),
                levels.iter().copied().fold(0.0, f64::max),
            ],
        }
    }

    /// Standard deviation of the level, metres, by root-sum-square of
    /// 1. a floor that samples do not take away;
    /// 2. the standard error of the fit;
    /// 3. what the stretches scatter beyond the samples' own spread: such a difference goes
    ///    with the place and does not average out;
    /// 4. the fall of the water between the edge and the place;
    /// 5. the rounding of the terrain.
    pub(super) fn sd(&self, fit: &Fit, farthest: f64, rounding: f64) -> f64 {
        let beyond = (self.stretches.powi(2) - self.samples.powi(2)).max(0.0);
        let squares = [
            FLOOR.powi(2),
            (OF_THE_FIT * fit.standard_error).powi(2),
            beyond,
            (FALL * farthest).powi(2),
            (OF_THE_ROUNDING * rounding).powi(2),
        ];
        squares.iter().sum::<f64>().sqrt()
    }
}
