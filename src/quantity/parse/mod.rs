//! Reading quantities as people write them: `36 in`, `3 ft 4 1/2 in`, `9.2 ft NAVD88`.
//!
//! A quantity always carries its unit and an elevation always its datum; there is no
//! default for either. What cannot be read is an error that quotes the text.

mod engineering;
mod error;
mod last_digit;
mod measure;
mod measures;
mod scan;

pub use engineering::{
    parse_area, parse_density, parse_flow, parse_flow_per_length, parse_force, parse_line_load,
    parse_mass, parse_mass_per_length, parse_moment, parse_moment_per_length, parse_part,
    parse_pressure, parse_rain, parse_ratio_of_span, parse_second_moment, parse_section_modulus,
    parse_stress, parse_volume,
};
pub use error::QuantityError;
pub use last_digit::last_digit;

use super::unit::{
    Length, Time, Velocity, day, foot_per_second, hour, meter, meter_per_second, minute,
};
use super::{AnnualChance, Elevation, LengthUnit, VerticalDatum};
use error::Expected;
use scan::{Part, numbers_and_words};

/// Greatest length that is taken for one: larger ones are slips of the unit.
const LONGEST_METRES: f64 = 1000.0;

/// Heights outside these bounds are not on the earth's dry surface: the shore of the Dead
/// Sea lies 430 m below sea level, Mount Everest's summit 8849 m above.
const LOWEST_METRES: f64 = -500.0;
const HIGHEST_METRES: f64 = 9000.0;

/// Greatest water speed that is taken for one; the loads here end far below it.
const FASTEST_METRES_PER_SECOND: f64 = 30.0;

/// Greatest warning time that is taken for one.
const LONGEST_DAYS: f64 = 366.0;

/// Reads a length that is not negative, such as a width: `36 in`, `3 ft 4 in`, `0.91 m`,
/// `35 1/2 in`, `3' 4"`.
///
/// # Errors
/// [`QuantityError`] quoting the text: no unit, an unknown unit, a negative or absurd
/// number, text behind the quantity.
///
/// ```
/// use sillmark::quantity::{parse_length, unit::inch};
/// assert_eq!(parse_length("3 ft 4 in")?.get::<inch>().round(), 40.0);
/// let error = parse_length("36").unwrap_err();
/// assert_eq!(error.problem(), "it has no unit");
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_length(text: &str) -> Result<Length, QuantityError> {
    let length = length_of(text, Expected::Length)?;
    if length.value < 0.0 {
        return Err(QuantityError::new(text, Expected::Length, "it is negative"));
    }
    Ok(length)
}

/// Reads a length that may be negative, such as the height of a sill over the threshold:
/// `-2 in`, `0 in`, `0.15 m`.
///
/// # Errors
/// As [`parse_length`], but for the sign.
pub fn parse_signed_length(text: &str) -> Result<Length, QuantityError> {
    length_of(text, Expected::SignedLength)
}

/// Reads an elevation, a height with its datum: `9.2 ft NAVD88`, `2.80 m EPSG:5703`.
///
/// # Errors
/// [`QuantityError`] quoting the text; a missing datum is an error, there is no default.
///
/// ```
/// use sillmark::quantity::parse_elevation;
/// assert_eq!(parse_elevation("9.2 ft NAVD88")?.datum().to_string(), "NAVD88");
/// assert_eq!(parse_elevation("9.2 ft").unwrap_err().problem(), "it has no vertical datum");
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_elevation(text: &str) -> Result<Elevation, QuantityError> {
    let fail = |problem: String| QuantityError::new(text, Expected::Elevation, problem);
    let (parts, rest) = numbers_and_words(text).map_err(fail)?;
    let height = sum(&parts).map_err(fail)?;
    if rest.is_empty() {
        return Err(fail("it has no vertical datum".to_owned()));
    }
    let datum: VerticalDatum = rest.parse().map_err(|_| {
        fail(format!(
            "{rest:?} is not a known vertical datum (those are {})",
            VerticalDatum::ACCEPTED
        ))
    })?;
    if !is_height_of_land(height) {
        return Err(fail("no dry land lies that high or low".to_owned()));
    }
    Ok(Elevation::new(height, datum))
}

/// Whether dry land lies at such a height above or below sea level.
///
/// ```
/// use sillmark::quantity::{is_height_of_land, unit::{Length, foot}};
/// assert!(is_height_of_land(Length::new::<foot>(8.1)));
/// assert!(!is_height_of_land(Length::new::<foot>(-9999.0)));
/// ```
#[must_use]
pub fn is_height_of_land(height: Length) -> bool {
    (LOWEST_METRES..=HIGHEST_METRES).contains(&height.get::<meter>())
}

/// Reads a water speed: `2 ft/s`, `0.6 m/s`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_velocity(text: &str) -> Result<Velocity, QuantityError> {
    let fail = |problem: String| QuantityError::new(text, Expected::Velocity, problem);
    let (number, unit) = scan::number_and_rest(text).map_err(fail)?;
    let velocity = match unit.to_ascii_lowercase().as_str() {
        "ft/s" | "fps" => Velocity::new::<foot_per_second>(number),
        "m/s" => Velocity::new::<meter_per_second>(number),
        "" => return Err(fail("it has no unit".to_owned())),
        other => return Err(fail(format!("{other:?} is not a unit of speed"))),
    };
    if !(0.0..=FASTEST_METRES_PER_SECOND).contains(&velocity.get::<meter_per_second>()) {
        return Err(fail("no flood flows at that speed".to_owned()));
    }
    Ok(velocity)
}

/// Reads a time: `12 h`, `90 min`, `1 h 30 min`, `3 days`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_duration(text: &str) -> Result<Time, QuantityError> {
    let fail = |problem: String| QuantityError::new(text, Expected::Duration, problem);
    let (number, unit) = scan::number_and_rest(text).map_err(fail)?;
    let (first, behind) = scan::leading_word(unit);
    let time = match unit.to_ascii_lowercase().as_str() {
        _ if scan::is_hours(first) && scan::starts_a_number(behind) => {
            let (minutes, unit) = scan::number_and_rest(behind).map_err(fail)?;
            let is_minutes = matches!(unit, "min" | "minute" | "minutes");
            if !is_minutes || !(0.0..60.0).contains(&minutes) {
                return Err(fail(
                    "the minutes behind the hours are not between 0 and 60".to_owned(),
                ));
            }
            Time::new::<hour>(number) + Time::new::<minute>(minutes.copysign(number))
        }
        hours if scan::is_hours(hours) => Time::new::<hour>(number),
        "min" | "minute" | "minutes" => Time::new::<minute>(number),
        "day" | "days" => Time::new::<day>(number),
        "" => return Err(fail("it has no unit".to_owned())),
        other => return Err(fail(format!("{other:?} is not a unit of time"))),
    };
    if !(0.0..=LONGEST_DAYS).contains(&time.get::<day>()) {
        return Err(fail("it is negative or longer than a year".to_owned()));
    }
    Ok(time)
}

/// Reads an annual chance: `1%`, `0.2%`, `1 in 100`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_annual_chance(text: &str) -> Result<AnnualChance, QuantityError> {
    let fail = |problem: String| QuantityError::new(text, Expected::AnnualChance, problem);
    let (number, rest) = scan::number_and_rest(text).map_err(fail)?;
    let probability = match rest.split_whitespace().collect::<Vec<_>>().as_slice() {
        ["%"] => number / 100.0,
        ["in", years] => {
            number
                / years
                    .parse::<f64>()
                    .map_err(|_| fail(format!("{years:?} is not a number")))?
        }
        _ => {
            return Err(fail(
                "it is neither a percentage nor \"1 in\" a number of years".to_owned(),
            ));
        }
    };
    AnnualChance::new(probability).ok_or_else(|| fail("it is not between 0% and 100%".to_owned()))
}

fn length_of(text: &str, expected: Expected) -> Result<Length, QuantityError> {
    let fail = |problem: String| QuantityError::new(text, expected, problem);
    let (parts, rest) = numbers_and_words(text).map_err(fail)?;
    let length = sum(&parts).map_err(fail)?;
    if !rest.is_empty() {
        return Err(fail(format!(
            "{rest:?} behind the length is not understood"
        )));
    }
    // Written so that what is not a number at all (a fraction of two endless rows of digits)
    // does not pass either.
    if !(-LONGEST_METRES..=LONGEST_METRES).contains(&length.get::<meter>()) {
        return Err(fail("it is absurdly large".to_owned()));
    }
    Ok(length)
}

/// Adds up the parts of a compound length; only feet and inches may stand together, and
/// the sign of the first part holds for the whole.
fn sum(parts: &[Part]) -> Result<Length, String> {
    match parts {
        [] => Err("it has no number".to_owned()),
        [one] => Ok(one.unit.length(one.number)),
        [feet, inches] if feet.unit == LengthUnit::Foot && inches.unit == LengthUnit::Inch => {
            if !(0.0..12.0).contains(&inches.number) {
                return Err("the inches behind the feet are not between 0 and 12".to_owned());
            }
            let inches = inches.number.copysign(feet.number);
            Ok(LengthUnit::Foot.length(feet.number) + LengthUnit::Inch.length(inches))
        }
        _ => Err("only feet and inches can stand together".to_owned()),
    }
}
