//! Which grids are here, and which are missing.

use std::path::PathBuf;

use super::proj_operations::{Bounds, GridFile, Operation};
use crate::quantity::{Length, VerticalDatum, unit::meter};

/// Pairs of datums worth a line in a list of what can be converted: surveys and flood maps of
/// one country, and each national datum against the geoid that global terrain is counted from.
pub const COMMON_DATUM_PAIRS: [(VerticalDatum, VerticalDatum); 8] = [
    (VerticalDatum::Ngvd29, VerticalDatum::Navd88),
    (VerticalDatum::Navd88, VerticalDatum::Egm2008),
    (VerticalDatum::Odn, VerticalDatum::Egm2008),
    (VerticalDatum::Nap, VerticalDatum::Egm2008),
    (VerticalDatum::Nap, VerticalDatum::Dhhn2016),
    (VerticalDatum::NgfIgn69, VerticalDatum::Egm2008),
    (VerticalDatum::Dhhn2016, VerticalDatum::Egm2008),
    (VerticalDatum::Egm96, VerticalDatum::Egm2008),
];

/// A box in degrees, as the EPSG Dataset bounds the use of an operation.
#[derive(Clone, Debug, PartialEq)]
pub struct UseArea {
    /// The area in words.
    pub name: String,
    /// Western edge, degrees east; greater than `east` where the box holds the antimeridian.
    pub west: f64,
    /// Southern edge, degrees north.
    pub south: f64,
    /// Eastern edge, degrees east.
    pub east: f64,
    /// Northern edge, degrees north.
    pub north: f64,
}

/// A grid file that a conversion between two datums reads.
#[derive(Clone, Debug, PartialEq)]
pub struct GridStatus {
    /// Its exact name.
    pub file: String,
    /// Where it was found; `None` where it is missing.
    pub found: Option<PathBuf>,
    /// Where PROJ's project offers it; `None` where it does not.
    pub address: Option<String>,
    /// The operation that reads it, by its name in the EPSG Dataset.
    pub operation: String,
    /// Accuracy of the operation; `None` where none is stated.
    pub accuracy: Option<Length>,
    /// Where the operation may be used; `None` where that is not stated.
    pub area: Option<UseArea>,
}

impl GridStatus {
    /// Whether the file was found.
    #[must_use]
    pub const fn is_present(&self) -> bool {
        self.found.is_some()
    }

    pub(super) fn new(operation: &Operation, grid: &GridFile) -> Self {
        Self {
            file: grid.name.clone(),
            found: grid.path.as_ref().map(PathBuf::from),
            address: grid.address.clone(),
            operation: operation.name.clone(),
            accuracy: operation.accuracy.map(Length::new::<meter>),
            area: operation.bounds.map(
                |Bounds {
                     west,
                     south,
                     east,
                     north,
                 }| UseArea {
                    name: operation.area.clone(),
                    west,
                    south,
                    east,
                    north,
                },
            ),
        }
    }
}
