//! What is asked for, and what is answered.

use reqwest::Url;
use reqwest::header::{self, HeaderMap, HeaderName};

/// What is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Request {
    /// Where.
    pub url: Url,
    /// A form to be posted; `None` is a plain request.
    pub form: Option<Vec<(String, String)>>,
    /// The kind of answer that is wanted.
    pub accept: &'static str,
    /// What the answer was that is at hand.
    pub known: Validators,
}

/// How a server knows an answer again (RFC 9110, section 8.8).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Validators {
    /// `ETag`.
    pub etag: Option<String>,
    /// `Last-Modified`.
    pub last_modified: Option<String>,
}

impl Validators {
    pub(super) fn of(headers: &HeaderMap) -> Self {
        Self {
            etag: text(headers, header::ETAG),
            last_modified: text(headers, header::LAST_MODIFIED),
        }
    }
}

/// What a server answers.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A whole body.
    Body {
        /// Its bytes, unpacked.
        bytes: Vec<u8>,
        /// Its kind, as the server says.
        content_type: Option<String>,
        /// Its coordinate reference system, as the server says (`Content-Crs`, OGC API -
        /// Features part 2).
        content_crs: Option<String>,
        /// Where it came from when redirects were followed, without keys.
        address: String,
        /// How the server knows it again.
        validators: Validators,
    },
    /// What is at hand still holds.
    NotModified,
}

/// The text of a header.
pub(super) fn text(headers: &HeaderMap, name: HeaderName) -> Option<String> {
    let value = headers.get(name)?;
    value.to_str().ok().map(str::to_owned)
}
