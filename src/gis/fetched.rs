//! What a file says of the service that its content was fetched from.

use std::fmt;

use gdal::Metadata;

use crate::quantity::{Length, unit::meter};

/// Where and when the content of a file was fetched.
///
/// It stands in the file itself, as two items of its metadata, so that whoever reads the file
/// later can still say it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fetched {
    /// The address of the service, without keys.
    pub from: String,
    /// When, as HTTP writes a date (RFC 9110, section 5.6.7).
    pub on: String,
}

/// The item that holds the address.
pub(crate) const FETCHED_FROM: &str = "SILLMARK_FETCHED_FROM";

/// The item that holds the time.
pub(crate) const FETCHED_ON: &str = "SILLMARK_FETCHED_ON";

/// The item that holds the side of a cell of the whole served raster, in metres. In degrees a
/// cell is narrower in the north, and what a crop says of a place must not change with the other
/// places that it was made for.
pub(crate) const CELL_METRES: &str = "SILLMARK_CELL_METRES";

impl Fetched {
    /// What a raster or layer says; `None` where it was not fetched.
    pub(crate) fn of(source: &impl Metadata) -> Option<Self> {
        let item = |key| {
            let text = source.metadata_item(key, "")?;
            let text = text.trim().replace(char::is_control, " ");
            (!text.is_empty()).then_some(text)
        };
        Some(Self {
            from: item(FETCHED_FROM)?,
            on: item(FETCHED_ON)?,
        })
    }
}

impl fmt::Display for Fetched {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}, fetched {}", self.from, self.on)
    }
}

/// The side of a cell at the middle of the served raster that a crop was made of; `None` where
/// the raster is none.
pub(crate) fn served_cell_size(raster: &impl Metadata) -> Option<Length> {
    let metres: f64 = raster.metadata_item(CELL_METRES, "")?.parse().ok()?;
    (metres.is_normal() && metres > 0.0).then(|| Length::new::<meter>(metres))
}
