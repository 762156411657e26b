//! Bounds on the speed of flood water that nobody measured.

use super::standard_gravity;
use crate::quantity::unit::{Time, second};
use crate::quantity::{Length, Velocity};

/// Between which speeds water of a given depth is taken to flow where no study says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VelocityBounds {
    /// V = d / 1 s.
    pub lower: Velocity,
    /// V = √(g·d).
    pub upper: Velocity,
}

/// Speed bounds at a stillwater depth (ASCE 7-10 commentary, Eqs. C5-1 and C5-2, with
/// g = 32.2 ft/s²).
///
/// ```
/// use sillmark::load::velocity_bounds;
/// use sillmark::quantity::{Length, unit::{foot, foot_per_second}};
/// let bounds = velocity_bounds(Length::new::<foot>(3.25));
/// assert!((bounds.upper.get::<foot_per_second>() - 10.23).abs() < 0.005);
/// ```
#[must_use]
pub fn velocity_bounds(depth: Length) -> VelocityBounds {
    VelocityBounds {
        lower: depth / Time::new::<second>(1.0),
        upper: (standard_gravity() * depth).sqrt(),
    }
}
