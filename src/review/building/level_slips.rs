//! A level of the proposal as it is compared, and what it may have gone wrong by.

use crate::quantity::Elevation;
use crate::review::desk::{Desk, TheirLevel};
use crate::review::explain::{datum_slips, unit_slips};
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::uncertain::lower_within_ours;
use crate::review::{Figure, Finding, Point, Subject, Tolerance, Topic};

/// A level as it is compared.
pub(in crate::review) fn proposed(theirs: &TheirLevel) -> Proposed {
    Proposed {
        figure: Figure::Elevation(theirs.on_ours.elevation),
        written: theirs.text.clone(),
    }
}

/// A level against ours, with what any level may have gone wrong by.
pub(super) fn level_against_ours(
    desk: &Desk<'_>,
    at: (&Subject, Topic),
    ours: Elevation,
    theirs: &TheirLevel,
    tolerance: &Tolerance,
    reference: String,
) -> Point {
    let point = Point::compared(
        at,
        Figure::Elevation(ours),
        proposed(theirs),
        tolerance.clone(),
        Sense::MoreIsSafer,
        reference,
    );
    let mut findings = lower_within_ours(&point);
    if let Some(difference) = point.difference() {
        findings.extend(level_slips(desk, theirs, ours, tolerance, difference));
    }
    point.with(findings)
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
