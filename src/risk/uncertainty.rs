//! Uncertainties of several sources together.

use crate::quantity::{Length, unit::meter};

/// The standard deviation of a sum of independent errors: the root of the sum of squares.
///
/// ```
/// use sillmark::quantity::{Length, unit::meter};
/// use sillmark::risk::root_sum_square;
/// let metres = Length::new::<meter>;
/// let sd = root_sum_square([metres(0.10), metres(0.15)]);
/// assert!((sd.get::<meter>() - 0.180).abs() < 5e-4);
/// ```
#[must_use]
pub fn root_sum_square(deviations: impl IntoIterator<Item = Length>) -> Length {
    let square = |sd: Length| sd.get::<meter>().powi(2);
    let sum: f64 = deviations.into_iter().map(square).sum();
    Length::new::<meter>(sum.sqrt())
}
