//! Water under a slab that lifts it.

use super::error::coefficient;
use super::{LoadError, hydrostatic_pressure};
use crate::quantity::{Length, Pressure, SpecificWeight};

/// Upward pressure under a slab whose underside lies `head` below the water surface, p = γ·h.
/// A slab above the water is not lifted.
///
/// ```
/// use sillmark::load::{Salinity, dead_weight_against_uplift, uplift_pressure};
/// use sillmark::quantity::unit::{Length, foot, pound_per_square_foot};
/// let uplift = uplift_pressure(Length::new::<foot>(4.0), Salinity::Fresh.specific_weight());
/// assert!((uplift.get::<pound_per_square_foot>() - 249.6).abs() < 1e-9);
/// let weight = dead_weight_against_uplift(uplift, 1.33)?;
/// assert!((weight.get::<pound_per_square_foot>() - 331.968).abs() < 1e-9);
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
#[must_use]
pub fn uplift_pressure(head: Length, weight: SpecificWeight) -> Pressure {
    hydrostatic_pressure(head.max(Length::default()), weight)
}

/// Dead weight on each unit of the slab's area that holds it down with a factor of safety.
///
/// The factor is the user's to state, there is no default: 1.33 is recalled from FEMA P-259,
/// but not surely enough.
///
/// # Errors
/// [`LoadError`] for a factor below 1 or above 10.
pub fn dead_weight_against_uplift(
    uplift: Pressure,
    safety_factor: f64,
) -> Result<Pressure, LoadError> {
    let factor = coefficient(
        "factor of safety against flotation",
        safety_factor,
        1.0..=10.0,
        "a number from 1 to 10",
    )?;
    Ok(uplift.max(Pressure::default()) * factor)
}

/// Factor of safety against flotation that a dead weight on each unit of area has; `None`
/// where nothing lifts the slab.
#[must_use]
pub fn flotation_safety(dead_weight: Pressure, uplift: Pressure) -> Option<f64> {
    (uplift > Pressure::default()).then(|| (dead_weight / uplift).value)
}
