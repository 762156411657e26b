//! Numbers as they are written: in SI units, to a millionth.

use crate::quantity::unit::{Length, meter};

pub(super) fn metres(length: Length) -> f64 {
    rounded(length.get::<meter>())
}

/// To a millionth, and no minus before a zero.
pub(super) fn rounded(number: f64) -> f64 {
    (number * 1e6).round() / 1e6 + 0.0
}
