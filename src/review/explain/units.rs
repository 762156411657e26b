//! Feet and metres mixed up.

use crate::quantity::UnitSystem;
use crate::review::{Figure, Finding, UnitSlip};

/// A foot in metres.
const FOOT: f64 = 0.3048;

/// The slips of unit that make a figure ours. `text` is the figure as it was written; `same`
/// says what the figure becomes when its number is multiplied, where that equals ours within
/// the tolerance that goes with it.
///
/// The US survey foot is not among them: two parts in a million are within the tolerance.
pub(in crate::review) fn unit_slips(
    text: &str,
    same: impl Fn(f64) -> Option<Figure>,
) -> Vec<Finding> {
    let metric = UnitSystem::of_text(text) == UnitSystem::Si;
    let (larger, smaller) = if metric {
        (UnitSlip::ToMetresTwice, UnitSlip::NumberIsFeet)
    } else {
        (UnitSlip::NumberIsMetres, UnitSlip::ToFeetTwice)
    };
    [(larger, 1.0 / FOOT), (smaller, FOOT)]
        .into_iter()
        .filter_map(|(slip, factor)| {
            let figure = same(factor)?;
            Some(Finding::Units { slip, figure })
        })
        .collect()
}
