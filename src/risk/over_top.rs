//! The chance that the design event passes a given height.

use std::f64::consts::SQRT_2;

use crate::quantity::Length;

/// The chance that a level, known with the standard deviation `sd`, lies more than `margin`
/// above its stated value.
///
/// The level is taken as normally distributed about its stated value. The chance covers what
/// `sd` covers (mapping and measurement), not the flood study itself, and it is for the
/// design event: the chance in a year is smaller.
///
/// ```
/// use sillmark::quantity::{Length, unit::meter};
/// use sillmark::risk::chance_of_passing;
/// let chance = chance_of_passing(Length::new::<meter>(0.1), Length::new::<meter>(0.1));
/// assert!((chance - 0.1587).abs() < 1e-4); // one standard deviation, table of the normal distribution
/// ```
#[must_use]
pub fn chance_of_passing(margin: Length, sd: Length) -> f64 {
    if sd.value > 0.0 {
        libm::erfc((margin / sd).value / SQRT_2) / 2.0
    } else if margin.value < 0.0 {
        1.0
    } else {
        0.0
    }
}
