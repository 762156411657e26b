//! One row of the input, understood.

use std::ops::Deref;

use crate::design::Occupancy;
use crate::quantity::{Length, UnitSystem};
use crate::site::{Location, Threshold, WallKind};

/// What a row states; what only tables of openings state is owned or lent.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row<Opening> {
    pub(super) line: u64,
    pub(super) location: Location,
    pub(super) threshold: Threshold,
    pub(super) units: UnitSystem,
    /// What only tables of openings state.
    pub(super) opening: Option<Opening>,
}

/// What a row states of an opening and its building.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct OpeningRow {
    pub(super) building: String,
    pub(super) opening: String,
    pub(super) width: Option<Length>,
    pub(super) height: Option<Length>,
    pub(super) above_threshold: Option<Length>,
    pub(super) reveal: Option<Length>,
    pub(super) face: Option<Length>,
    pub(super) wall: Option<WallKind>,
    pub(super) occupancy: Option<Occupancy>,
}

impl OpeningRow {
    /// Bytes that it takes.
    pub(super) fn bytes(&self) -> usize {
        size_of::<Self>() + self.building.capacity() + self.opening.capacity()
    }
}

impl<Opening: Deref<Target = OpeningRow>> Row<Opening> {
    /// What a message shows of the row.
    pub(super) fn shown(&self, field: &str) -> String {
        match (field, self.threshold) {
            ("threshold" | "vertical_datum", Threshold::Stated(elevation)) => {
                self.units.elevation(elevation)
            }
            ("width", _) => {
                let width = self.opening.as_ref().and_then(|opening| opening.width);
                width.map_or_else(String::new, |width| self.units.dimension(width))
            }
            _ => format!("{} {}", self.location.longitude(), self.location.latitude()),
        }
    }
}
