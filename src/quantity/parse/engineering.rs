//! The readers of structures and of water: forces, strengths, sections, masses, flows.
//!
//! Each takes a number and a unit; case, spaces and the way a power is written (`in2`, `in^2`,
//! `in²`) do not matter. Each refuses, quoting the text, what has no unit, a unit of something
//! else, a sign that cannot be, or a number so large that the unit must be a slip.

use super::error::{Expected, QuantityError};
use super::measures;
use super::scan::number_and_rest;
use crate::quantity::unit::{
    Area, FlowPerLength, Force, LineLoad, LinearMassDensity, Mass, MassDensity, Moment,
    MomentPerLength, Pressure, Ratio, SecondMoment, SectionModulus, Velocity, Volume, VolumeRate,
};

/// Reads a force: `1200 lb`, `500 N`, `5 kN`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
///
/// ```
/// use sillmark::quantity::{parse_force, unit::newton};
/// assert_eq!(parse_force("5 kN")?.get::<newton>(), 5000.0);
/// let error = parse_force("5 kg").unwrap_err();
/// assert_eq!(error.problem(), "\"kg\" is not a unit of force (those are lb, kip, N, kN)");
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_force(text: &str) -> Result<Force, QuantityError> {
    measures::FORCE.read(text)
}

/// Reads a moment: `1500 ft-lb`, `2 kN·m`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_moment(text: &str) -> Result<Moment, QuantityError> {
    measures::MOMENT.read(text)
}

/// Reads a force on each unit of width: `281 lb/ft`, `4.1 kN/m`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
///
/// ```
/// use sillmark::quantity::{parse_line_load, unit::in_pounds_per_foot};
/// assert!((in_pounds_per_foot(parse_line_load("1.2 kip/ft")?) - 1200.0).abs() < 1e-9);
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_line_load(text: &str) -> Result<LineLoad, QuantityError> {
    measures::LINE_LOAD.read(text)
}

/// Reads a moment on each unit of width: `281 ft-lb/ft`, `1.25 kN·m/m`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_moment_per_length(text: &str) -> Result<MomentPerLength, QuantityError> {
    measures::MOMENT_PER_LENGTH.read(text)
}

/// Reads the strength or the modulus of a material: `4000 psi`, `25 ksi`, `170 MPa`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_stress(text: &str) -> Result<Pressure, QuantityError> {
    measures::STRESS.read(text)
}

/// Reads a pressure of water: `187 psf`, `9 kPa`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_pressure(text: &str) -> Result<Pressure, QuantityError> {
    measures::PRESSURE.read(text)
}

/// Reads an area: `2.16 in2`, `1400 mm²`, `600 ft^2`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
///
/// ```
/// use sillmark::quantity::parse_area;
/// assert_eq!(parse_area("2 in2")?, parse_area("2 in²")?);
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_area(text: &str) -> Result<Area, QuantityError> {
    measures::AREA.read(text)
}

/// Reads a volume of water: `40 gal` (US gallons of 231 in³), `150 L`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_volume(text: &str) -> Result<Volume, QuantityError> {
    measures::VOLUME.read(text)
}

/// Reads an elastic or plastic section modulus: `1.49 in3`, `24.4 cm³`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_section_modulus(text: &str) -> Result<SectionModulus, QuantityError> {
    measures::SECTION_MODULUS.read(text)
}

/// Reads a second moment of area: `1.49 in4`, `61.9 cm⁴`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_second_moment(text: &str) -> Result<SecondMoment, QuantityError> {
    measures::SECOND_MOMENT.read(text)
}

/// Reads a mass: `23 lb`, `10.5 kg`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_mass(text: &str) -> Result<Mass, QuantityError> {
    measures::MASS.read(text)
}

/// Reads a mass per length: `2.7 lb/ft`, `4 kg/m`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_mass_per_length(text: &str) -> Result<LinearMassDensity, QuantityError> {
    measures::MASS_PER_LENGTH.read(text)
}

/// Reads the density of a material: `2700 kg/m3`, `0.098 lb/in3`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_density(text: &str) -> Result<MassDensity, QuantityError> {
    measures::DENSITY.read(text)
}

/// Reads a flow of water: `50 gal/min`, `3 L/s`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
///
/// ```
/// use sillmark::quantity::parse_flow;
/// // A US gallon is 231 in³, 3.785411784 L.
/// let difference = parse_flow("1 gpm")? - parse_flow("3.785411784 L/min")?;
/// assert!(difference.value.abs() < 1e-18);
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_flow(text: &str) -> Result<VolumeRate, QuantityError> {
    measures::FLOW.read(text)
}

/// Reads what leaks through each length of a seal: `0.5 gal/h/ft`, `6 L/h/m`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_flow_per_length(text: &str) -> Result<FlowPerLength, QuantityError> {
    measures::FLOW_PER_LENGTH.read(text)
}

/// Reads a rainfall: `2 in/h`, `50 mm/h`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_rain(text: &str) -> Result<Velocity, QuantityError> {
    measures::RAIN.read(text)
}

/// Bounds of a limit of deflection: a plank that sags by a tenth of its span is no barrier,
/// and nobody measures a ten-thousandth (common practice, no source).
const SPAN_PARTS: std::ops::RangeInclusive<f64> = 1e-4..=0.1;

/// Reads a part of a span, as limits of deflection are written: `1/120`, `L/120`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
///
/// ```
/// use sillmark::quantity::parse_ratio_of_span;
/// assert_eq!(parse_ratio_of_span("L/120")?.value, 1.0 / 120.0);
/// assert_eq!(parse_ratio_of_span("120").unwrap_err().problem(), "it is not a part of the span between 1/10000 and 1/10");
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
pub fn parse_ratio_of_span(text: &str) -> Result<Ratio, QuantityError> {
    let expected = Expected::Measure {
        noun: "a part of the span",
        accepted: "a part of the span, such as \"1/120\" or \"L/120\"",
    };
    let fail = |problem: String| QuantityError::new(text, expected, problem);
    let trimmed = text.trim();
    let divisor = trimmed
        .strip_prefix(['L', 'l'])
        .and_then(|behind| behind.trim_start().strip_prefix('/'));
    let part = divisor.map_or_else(
        || trimmed.to_owned(),
        |divisor| format!("1/{}", divisor.trim_start()),
    );
    let (value, rest) = number_and_rest(&part).map_err(fail)?;
    if !rest.is_empty() {
        return Err(fail(format!("{rest:?} behind it is not understood")));
    }
    if !SPAN_PARTS.contains(&value) {
        return Err(fail(
            "it is not a part of the span between 1/10000 and 1/10".to_owned(),
        ));
    }
    Ok(Ratio::new::<uom::si::ratio::ratio>(value))
}

/// Reads a part of a whole: `0.8`, `2/3`, `80%`.
///
/// # Errors
/// [`QuantityError`] quoting the text.
pub fn parse_part(text: &str) -> Result<Ratio, QuantityError> {
    let expected = Expected::Measure {
        noun: "a part of a whole",
        accepted: "a part between 0 and 1, such as \"0.8\", \"2/3\" or \"80%\"",
    };
    let fail = |problem: String| QuantityError::new(text, expected, problem);
    let (number, rest) = number_and_rest(text).map_err(fail)?;
    let value = match rest {
        "" => number,
        "%" => number / 100.0,
        other => return Err(fail(format!("{other:?} behind it is not understood"))),
    };
    if !(0.0..=1.0).contains(&value) {
        return Err(fail("it is not between 0 and 1".to_owned()));
    }
    Ok(Ratio::new::<uom::si::ratio::ratio>(value))
}
