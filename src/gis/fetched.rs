//! What a file says of where it was fetched from.

use gdal::{Dataset, Metadata as _};

use crate::quantity::{Length, unit::meter};

/// Names of the items of metadata in which a crop of a served file keeps its address, and the date
/// on which it was fetched.
pub(crate) const FETCHED_FROM: &str = "SILLMARK_ADDRESS";
pub(crate) const FETCHED_ON: &str = "SILLMARK_FETCHED";

/// The side of a cell of the served file in metres. In degrees a cell is narrower in the north, and
/// what a crop says of a place must not change with the other places that it was made for.
pub(crate) const CELL_METRES: &str = "SILLMARK_CELL_METRES";

/// Where a file on the disk was fetched from.
#[derive(Clone, Debug, PartialEq)]
pub struct Fetched {
    /// The address, without keys.
    pub address: String,
    /// When it was fetched, or last confirmed, as HTTP writes a date (RFC 9110, section 5.6.7).
    pub date: String,
    /// The side of a cell at the middle of the whole file, where it is told.
    pub cell_size: Option<Length>,
}

/// Where a raster was fetched from; `None` where it does not say so.
pub(crate) fn fetched(dataset: &Dataset) -> Option<Fetched> {
    let item = |name| dataset.metadata_item(name, "");
    let metres = item(CELL_METRES).and_then(|text| text.parse::<f64>().ok());
    Some(Fetched {
        address: item(FETCHED_FROM)?,
        date: item(FETCHED_ON)?,
        cell_size: metres
            .filter(|metres| metres.is_normal() && *metres > 0.0)
            .map(Length::new::<meter>),
    })
}
