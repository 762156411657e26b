//! How well a rounded level is known.

use crate::quantity::{Elevation, Length, LengthUnit};

/// Where the reading of rounded levels stands.
pub(super) const ROUNDING_SOURCE: &str = "a printed level lies within half a unit of its last digit (FEMA course IS-273, step 5); standard deviation of that: unit / √12";

/// The standard deviation of a level from the rounding of its last digit.
///
/// A level written as a whole number of `unit` may be off by half a unit either way, one with
/// a decimal by a twentieth. All errors in that range are taken as equally likely, so the
/// standard deviation is the width of the range over √12.
///
/// It is the rounding alone: the uncertainty of the flood study comes on top and is not
/// known here.
///
/// ```
/// use sillmark::level::rounding_sd;
/// use sillmark::quantity::{LengthUnit, parse_elevation, unit::foot};
/// let sd = rounding_sd(parse_elevation("9 ft NAVD88")?, LengthUnit::Foot);
/// assert!((sd.get::<foot>() - 0.2887).abs() < 1e-4);
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
#[must_use]
pub fn rounding_sd(level: Elevation, unit: LengthUnit) -> Length {
    let number = unit.read(level.height());
    let step = [1.0, 0.1, 0.01]
        .into_iter()
        .find(|step| ((number / step).round() * step - number).abs() < 1e-6)
        .unwrap_or(0.001);
    unit.length(step / 12.0_f64.sqrt())
}
