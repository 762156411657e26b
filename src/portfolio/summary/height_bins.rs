//! How often protection heights of each size occur.

use serde::{Deserialize, Serialize};

use super::verdict_counts::VerdictCounts;
use crate::quantity::Length;
use crate::quantity::unit::meter;
use crate::verdict::Verdict;

/// Protection heights in steps of a tenth of a metre, by verdict.
///
/// | bin | heights |
/// | --- | --- |
/// | 0 | nothing to protect: 0 or less |
/// | 1 to 30 | above (n − 1) × 0.1 m, up to n × 0.1 m |
/// | 31 | above 3 m |
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct HeightBins {
    /// As many bins as were needed so far; the last is not empty.
    bins: Vec<VerdictCounts>,
}

/// One bin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeightBin {
    /// Heights in this bin are above this; `None` for heights of 0 or less.
    pub above: Option<Length>,
    /// Heights in this bin are not above this; `None` for the last bin.
    pub up_to: Option<Length>,
    /// The rows in it.
    pub rows: VerdictCounts,
}

impl HeightBins {
    /// Steps up to [`HeightBins::top`].
    const STEPS: u32 = 30;
    const STEP_MICROMETRES: f64 = 100_000.0;

    /// Width of a bin: 0.1 m.
    #[must_use]
    pub fn step() -> Length {
        Length::new::<meter>(Self::STEP_MICROMETRES / 1e6)
    }

    /// The height above which all are counted together: 3 m.
    #[must_use]
    pub fn top() -> Length {
        Self::edge(Self::STEPS)
    }

    fn edge(step: u32) -> Length {
        Length::new::<meter>(f64::from(step) / (1e6 / Self::STEP_MICROMETRES))
    }

    pub(super) fn add(&mut self, metres: f64, verdict: Verdict) {
        // Whole micrometres: 0.3 / 0.1 is a little less than 3.
        let micrometres = (metres * 1e6).round();
        let step = (micrometres / Self::STEP_MICROMETRES).ceil();
        let bin = step.clamp(0.0, f64::from(Self::STEPS + 1));
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped above
        let bin = bin as usize;
        if self.bins.len() <= bin {
            self.bins.resize(bin + 1, VerdictCounts::default());
        }
        self.bins[bin].add(verdict);
    }

    pub(super) fn merge(&mut self, other: &Self) {
        if self.bins.len() < other.bins.len() {
            self.bins.resize(other.bins.len(), VerdictCounts::default());
        }
        for (rows, more) in self.bins.iter_mut().zip(&other.bins) {
            *rows += *more;
        }
    }

    /// The bins from the lowest to the highest that holds a row, empty ones between them too.
    pub fn each(&self) -> impl Iterator<Item = HeightBin> {
        (0..=Self::STEPS + 1)
            .zip(&self.bins)
            .map(|(bin, rows)| HeightBin {
                above: bin.checked_sub(1).map(Self::edge),
                up_to: (bin <= Self::STEPS).then(|| Self::edge(bin)),
                rows: *rows,
            })
    }

    /// The lowest bin at or below whose upper edge lies the part `part` of all rows with
    /// something to protect: 0.5 for half of them. `None` where there are no such rows.
    ///
    /// ```
    /// use sillmark::portfolio::summary::HeightBins;
    /// assert_eq!(HeightBins::default().holding(0.5), None);
    /// ```
    #[must_use]
    #[allow(clippy::cast_precision_loss)] // exact up to 9e15 rows
    pub fn holding(&self, part: f64) -> Option<HeightBin> {
        let wanted = part * self.above_nothing() as f64;
        let mut below = 0;
        self.each().skip(1).find(|bin| {
            below += bin.rows.total();
            below > 0 && below as f64 >= wanted
        })
    }

    /// Rows with something to protect.
    #[must_use]
    pub fn above_nothing(&self) -> u64 {
        self.bins.iter().skip(1).map(VerdictCounts::total).sum()
    }

    /// Rows whose protection height is known.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.bins.iter().map(VerdictCounts::total).sum()
    }
}
