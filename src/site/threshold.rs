//! The threshold of a building.

use crate::quantity::{Elevation, Length, VerticalDatum};

/// The edge from which sills are measured, and the datum of the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Threshold {
    /// Surveyed.
    Stated(Elevation),
    /// Nobody has surveyed it: an estimate from the ground of the terrain model.
    AboveGround {
        /// How far above the ground.
        height: Length,
        /// The datum of the answer.
        datum: VerticalDatum,
    },
}

impl Threshold {
    /// The datum of the answer.
    #[must_use]
    pub const fn datum(self) -> VerticalDatum {
        match self {
            Self::Stated(elevation) => elevation.datum(),
            Self::AboveGround { datum, .. } => datum,
        }
    }

    /// Where it lies, with the ground at the place; `None` for an estimate without ground.
    #[must_use]
    pub fn elevation(self, ground: Option<Elevation>) -> Option<Elevation> {
        match self {
            Self::Stated(elevation) => Some(elevation),
            Self::AboveGround { height, .. } => ground.map(|ground| ground.raised(height)),
        }
    }

    /// Whether it is an estimate.
    #[must_use]
    pub const fn is_estimate(self) -> bool {
        matches!(self, Self::AboveGround { .. })
    }
}
