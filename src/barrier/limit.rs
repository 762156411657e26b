//! Whether a length passes a limit.

use crate::quantity::Length;

/// Lengths that come out of feet and inches, or of metres, miss each other in the last binary
/// digits; a micrometre passes no limit.
pub(super) const ROUNDING_METRES: f64 = 1e-6;

/// Whether a length is more than a limit by more than rounding.
pub(crate) fn exceeds(length: Length, limit: Length) -> bool {
    (length - limit).value > ROUNDING_METRES
}
