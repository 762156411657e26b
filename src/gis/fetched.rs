//! What a file says of where it was fetched from.

use gdal::{Dataset, Metadata as _};

/// Names of the items of metadata in which a crop of a served file keeps its address, and the date
/// on which it was fetched.
pub(crate) const FETCHED_FROM: &str = "SILLMARK_ADDRESS";
pub(crate) const FETCHED_ON: &str = "SILLMARK_FETCHED";

/// Where a file on the disk was fetched from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fetched {
    /// The address, without keys.
    pub address: String,
    /// When it was fetched, or last confirmed, as HTTP writes a date (RFC 9110, section 5.6.7).
    pub date: String,
}

/// Where a raster was fetched from; `None` where it does not say so.
pub(crate) fn fetched(dataset: &Dataset) -> Option<Fetched> {
    Some(Fetched {
        address: dataset.metadata_item(FETCHED_FROM, "")?,
        date: dataset.metadata_item(FETCHED_ON, "")?,
    })
}
