//! What a file says of the service that its content was fetched from.

use std::fmt;
use std::time::UNIX_EPOCH;

use chrono::DateTime;
use gdal::Metadata;

use crate::quantity::{Length, unit::meter};
use crate::statement::printable;

/// Where and when the content of a file was fetched.
///
/// It stands in the file itself, as items of its metadata, so that whoever reads the file later
/// can still say it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fetched {
    /// The address of the service, without keys.
    pub from: String,
    /// When it was fetched, or last confirmed: `2026-11-26T01:23:36Z` (RFC 3339).
    pub on: String,
    /// What the service says of the right to use it, in its words.
    pub licence: Option<String>,
    /// What was noticed on the way, in words.
    pub noted: Option<String>,
}

/// The item that holds the address.
pub(crate) const FETCHED_FROM: &str = "SILLMARK_FETCHED_FROM";

/// The item that holds the time.
pub(crate) const FETCHED_ON: &str = "SILLMARK_FETCHED_ON";

/// The item that holds the licence.
const LICENCE: &str = "SILLMARK_LICENCE";

/// The item that holds what was noticed.
const NOTED: &str = "SILLMARK_NOTED";

/// The item that holds the side of a cell of the whole served raster, in metres. In degrees a
/// cell is narrower in the north, and what a crop says of a place must not change with the other
/// places that it was made for.
pub(crate) const CELL_METRES: &str = "SILLMARK_CELL_METRES";

impl Fetched {
    /// What a raster or layer says; `None` where it was not fetched.
    pub(crate) fn of(source: &impl Metadata) -> Option<Self> {
        let item = |key| {
            let text = printable(&source.metadata_item(key, "")?);
            let text = text.trim();
            (!text.is_empty()).then(|| text.to_owned())
        };
        Some(Self {
            from: item(FETCHED_FROM)?,
            on: item(FETCHED_ON)?,
            licence: item(LICENCE),
            noted: item(NOTED),
        })
    }

    /// The items that say it, with their values.
    pub(super) fn items(&self) -> impl Iterator<Item = (&'static str, &str)> {
        let always = [(FETCHED_FROM, self.from.as_str()), (FETCHED_ON, &self.on)];
        let more = [(LICENCE, &self.licence), (NOTED, &self.noted)];
        let more = more.into_iter();
        let more = more.filter_map(|(key, text)| Some((key, text.as_deref()?)));
        always.into_iter().chain(more)
    }
}

/// A time as HTTP writes it (RFC 9110, section 5.6.7) as RFC 3339 does; what is none stays.
pub(crate) fn in_rfc3339(http_date: &str) -> String {
    let time = httpdate::parse_http_date(http_date).ok();
    let since = time.and_then(|time| time.duration_since(UNIX_EPOCH).ok());
    let seconds = since.and_then(|since| i64::try_from(since.as_secs()).ok());
    let time = seconds.and_then(|seconds| DateTime::from_timestamp(seconds, 0));
    time.map_or_else(
        || http_date.to_owned(),
        |time| time.format("%Y-%m-%dT%H:%M:%SZ").to_string(),
    )
}

impl fmt::Display for Fetched {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        // To the minute, as people write it; blanks that do not break keep it on a line.
        let on = match self.on.split_once('T') {
            Some((day, time)) if time.len() > 5 && time.is_char_boundary(5) => {
                format!("{day}\u{a0}{}\u{a0}UTC", &time[..5])
            }
            _ => self.on.clone(),
        };
        write!(formatter, "{}, fetched {on}", self.from)
    }
}

/// The side of a cell at the middle of the served raster that a crop was made of; `None` where
/// the raster is none.
pub(crate) fn served_cell_size(raster: &impl Metadata) -> Option<Length> {
    let metres: f64 = raster.metadata_item(CELL_METRES, "")?.parse().ok()?;
    (metres.is_normal() && metres > 0.0).then(|| Length::new::<meter>(metres))
}

#[cfg(test)]
mod tests {
    use super::in_rfc3339;

    #[test]
    fn times_as_rfc_3339() {
        // RFC 9110, section 5.6.7: the same moment in its three forms.
        for text in [
            "Sun, 06 Nov 1994 08:49:37 GMT",
            "Sunday, 06-Nov-94 08:49:37 GMT",
            "Sun Nov  6 08:49:37 1994",
        ] {
            assert_eq!(in_rfc3339(text), "1994-11-06T08:49:37Z");
        }
        assert_eq!(in_rfc3339("yesterday"), "yesterday");
    }
}
