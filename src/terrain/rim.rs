//! Directions of the points on a rim.

use std::f64::consts::TAU;

use super::grid::as_float;

/// More directions than this are not kept: they are a megabyte, a rim of ten kilometres on
/// cells of one metre.
const MOST_KEPT: usize = 1 << 16;

/// Cosine and sine of as many directions as were asked for last: a run asks for one radius.
#[derive(Default)]
pub(super) struct Rim {
    directions: Vec<[f64; 2]>,
}

impl Rim {
    /// Cosine and sine of `count` directions around, evenly spread, the first to the east.
    pub(super) fn directions(&mut self, count: usize) -> impl Iterator<Item = [f64; 2]> {
        let kept = if count > MOST_KEPT { 0 } else { count };
        if self.directions.len() != kept {
            self.directions = (0..kept).map(|index| direction(index, count)).collect();
        }
        let rest = (kept..count).map(move |index| direction(index, count));
        self.directions.iter().copied().chain(rest)
    }
}

fn direction(index: usize, count: usize) -> [f64; 2] {
    let (sine, cosine) = (TAU * as_float(index) / as_float(count)).sin_cos();
    [cosine, sine]
}
