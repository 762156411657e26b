//! Numbers as they are written: in SI units, to a millionth.

use crate::quantity::unit::{Force, Length, LineLoad, in_newtons_per_metre, meter, newton};

pub(super) fn metres(length: Length) -> f64 {
    rounded(length.get::<meter>())
}

pub(super) fn newtons(force: Force) -> f64 {
    rounded(force.get::<newton>())
}

pub(super) fn newtons_per_metre(load: LineLoad) -> f64 {
    rounded(in_newtons_per_metre(load))
}

/// To a millionth, and no minus before a zero.
pub(super) fn rounded(number: f64) -> f64 {
    (number * 1e6).round() / 1e6 + 0.0
}

/// To a thousand-millionth, for flows in m³/s and for areas: a leaking seal lets through a few
/// millionths.
pub(super) fn finely(number: f64) -> f64 {
    (number * 1e9).round() / 1e9 + 0.0
}

/// A part of a whole; `None` where there is no whole to be a part of, since JSON has no
/// infinite number.
pub(super) fn part(number: f64) -> Option<f64> {
    number.is_finite().then(|| rounded(number))
}
