//! Water lifting what it surrounds.

use crate::quantity::unit::Force;
use crate::quantity::{SpecificWeight, Volume};

/// The upward force on a body that keeps `volume` of water out, F = γ·V (Archimedes; FEMA
/// P-55 Eq. 8.4, equation number from memory).
///
/// ```
/// use sillmark::load::{Salinity, buoyant_force};
/// use sillmark::quantity::{Length, unit::{foot, pound_force}};
/// let side = |feet| Length::new::<foot>(feet);
/// let force = buoyant_force(side(5.5) * side(14.0) * side(1.0), Salinity::Fresh.specific_weight());
/// assert!((force.get::<pound_force>() - 4804.8).abs() < 0.1);
/// ```
#[must_use]
pub fn buoyant_force(volume: Volume, weight: SpecificWeight) -> Force {
    weight * volume
}
