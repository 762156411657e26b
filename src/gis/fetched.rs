//! What a file says of the service that its content was fetched from.

use std::fmt;

use gdal::Metadata;

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
pub(crate) const FROM: &str = "SILLMARK_FETCHED_FROM";

/// The item that holds the time.
pub(crate) const ON: &str = "SILLMARK_FETCHED_ON";

impl Fetched {
    /// What a raster or layer says; `None` where it was not fetched.
    pub(crate) fn of(source: &impl Metadata) -> Option<Self> {
        let item = |key| {
            let text = source.metadata_item(key, "")?;
            let text = text.trim().replace(char::is_control, " ");
            (!text.is_empty()).then_some(text)
        };
        Some(Self {
            from: item(FROM)?,
            on: item(ON)?,
        })
    }
}

impl fmt::Display for Fetched {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}, fetched {}", self.from, self.on)
    }
}
