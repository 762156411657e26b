//! Sizes of units in coherent SI units, for the tables that read and print them; exact
//! definitions of NIST SP 811, appendix B.8.

pub(super) const INCH: f64 = 0.0254;
pub(super) const FOOT: f64 = 0.3048;
pub(super) const POUND_MASS: f64 = 0.453_592_37;
pub(super) const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// The US gallon, 231 in³.
pub(super) const GALLON: f64 = 231.0 * INCH * INCH * INCH;
pub(super) const LITRE: f64 = 1e-3;
pub(super) const MINUTE: f64 = 60.0;
pub(super) const HOUR: f64 = 3600.0;
pub(super) const POUND_PER_SQUARE_INCH: f64 = POUND_FORCE / (INCH * INCH);
