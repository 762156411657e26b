//! Why the lines around a place do not tell its level.

use crate::crs::CrsError;
use crate::quantity::{IncomparableDatums, Length, UnitSystem};

/// Lines that do not tell the level at a place.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LineRefusal {
    /// The place has no coordinates in the layer's system.
    #[error(transparent)]
    Crs(#[from] CrsError),
    /// Neighbouring lines stand on datums that cannot be compared.
    #[error("the lines around the place cannot be compared: {0}")]
    Datums(#[from] IncomparableDatums),
    /// The place lies too far beyond the last line.
    #[error(
        "the place lies {} {direction} of the last line, {line}: levels are not extended farther than {}",
        units.distance(*distance),
        units.distance(*limit)
    )]
    BeyondLast {
        /// `upstream` or `downstream`.
        direction: &'static str,
        /// The last line.
        line: String,
        /// How far the place is from it.
        distance: Length,
        /// How far would be accepted.
        limit: Length,
        /// The units to print.
        units: UnitSystem,
    },
    /// One line and nothing to compare it with.
    #[error(
        "the place lies {} from {line} and no other line tells which way the water falls: levels are not extended from a single line",
        units.distance(*distance)
    )]
    OneLine {
        /// The line.
        line: String,
        /// How far the place is from it.
        distance: Length,
        /// The units to print.
        units: UnitSystem,
    },
}
