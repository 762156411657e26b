//! Feet and metres mixed up.

use crate::quantity::{LengthUnit, UnitSystem};
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
    let converted_twice = match UnitSystem::of_text(text) {
        UnitSystem::Si => (UnitSlip::ToMetresTwice, 1.0 / FOOT),
        UnitSystem::Us => (UnitSlip::ToFeetTwice, FOOT),
    };
    let other = other_unit(text).map(|(unit, factor)| match unit {
        LengthUnit::Metre => (UnitSlip::NumberIsMetres, factor),
        _ => (UnitSlip::NumberIsFeet, factor),
    });
    other
        .into_iter()
        .chain([converted_twice])
        .filter_map(|(slip, factor)| {
            let figure = same(factor)?;
            Some(Finding::Units { slip, figure })
        })
        .collect()
}

/// The other unit of a length that is written in feet or in metres, and what it is multiplied
/// by if its number is one of that unit. `None` where it is written in inches, in centimetres,
/// or in two units.
pub(in crate::review) fn other_unit(text: &str) -> Option<(LengthUnit, f64)> {
    let words = text.split(|each: char| each.is_whitespace() || each.is_ascii_digit());
    let mut units = words.filter_map(|word| word.parse::<LengthUnit>().ok());
    match (units.next()?, units.next()) {
        (LengthUnit::Foot | LengthUnit::SurveyFoot, None) => Some((LengthUnit::Metre, 1.0 / FOOT)),
        (LengthUnit::Metre, None) => Some((LengthUnit::Foot, FOOT)),
        _ => None,
    }
}
