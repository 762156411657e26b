//! A level of the proposal as it is compared, and what it may have gone wrong by.

use crate::quantity::Elevation;
use crate::review::desk::{Desk, TheirLevel};
use crate::review::explain::{datum_slips, unit_slips};
use crate::review::point::Proposed;
use crate::review::{Figure, Finding, Tolerance};

/// A level as it is compared.
pub(in crate::review) fn proposed(theirs: &TheirLevel) -> Proposed {
    Proposed {
        figure: Figure::Elevation(theirs.on_ours.elevation),
        written: theirs.text.clone(),
    }
}

/// Datums and units mixed up in an elevation.
pub(in crate::review) fn level_slips(
    desk: &Desk<'_>,
    theirs: &TheirLevel,
    ours: Elevation,
    tolerance: &Tolerance,
    difference: f64,
) -> Vec<Finding> {
    let mut found = datum_slips(theirs.stated.datum(), difference, tolerance, desk.shifts);
    // What follows from other figures has no unit of its own.
    if theirs.text.is_empty() {
        return found;
    }
    found.extend(unit_slips(&theirs.text, |factor| {
        let number = theirs.stated.height() * factor;
        let shifted = Elevation::new(number, theirs.stated.datum());
        let shifted = desk.shifts.convert(shifted, desk.datum()).ok()?.elevation;
        let scaled = tolerance.clone().with_last_digit_times(factor);
        let same = scaled.takes(ours.height().value, shifted.height().value);
        same.then_some(Figure::Elevation(shifted))
    }));
    found
}
