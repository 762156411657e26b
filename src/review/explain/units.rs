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
    other_unit(text)
        .into_iter()
        .chain([converted_twice])
        .filter_map(|(slip, factor)| {
            let figure = same(factor)?;
            Some(Finding::Units { slip, figure })
        })
        .collect()
}

/// What a length becomes if its number is one of the other unit: feet for metres, metres for
/// feet. `None` where it is written in inches, in centimetres, or in two units.
pub(in crate::review) fn other_unit(text: &str) -> Option<(UnitSlip, f64)> {
    let words = text.split(|each: char| each.is_whitespace() || each.is_ascii_digit());
    let mut units = words.filter_map(|word| word.parse::<LengthUnit>().ok());
    match (units.next()?, units.next()) {
        (LengthUnit::Foot | LengthUnit::SurveyFoot, None) => {
            Some((UnitSlip::NumberIsMetres, 1.0 / FOOT))
        }
        (LengthUnit::Metre, None) => Some((UnitSlip::NumberIsFeet, FOOT)),
        _ => None,
    }
}
