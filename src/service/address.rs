//! An address that a user names.

use std::fmt;

use reqwest::Url;

use super::secret::{disguised, shown};
use crate::statement::{Stated, StatementError};

/// The address of a service: `http` or `https`, with a host, without a user's name or password.
///
/// It is shown with the values of its parameters hidden but for those that are known to be
/// harmless, so that no log or report tells a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Address(Url);

impl Address {
    /// Whether a text names a service, and not a file.
    ///
    /// ```
    /// use sillmark::service::Address;
    /// assert!(Address::is_meant("https://example.org/collections/zones"));
    /// assert!(!Address::is_meant("zones.gpkg:layer"));
    /// ```
    #[must_use]
    pub fn is_meant(text: &str) -> bool {
        let text = text.trim_start();
        let Some((scheme, behind)) = text.split_once(':') else {
            return false;
        };
        let is_http = ["http", "https"]
            .iter()
            .any(|http| scheme.eq_ignore_ascii_case(http));
        let is_word = scheme.bytes().all(|letter| letter.is_ascii_alphanumeric());
        is_http || (behind.starts_with("//") && !scheme.is_empty() && is_word)
    }

    /// Reads an address.
    ///
    /// # Errors
    /// [`StatementError`] for another scheme than `http` and `https`, an address without a host,
    /// one with a user's name or password in it, and a pattern with braces. It shows scheme, host
    /// and path.
    ///
    /// ```
    /// use sillmark::service::Address;
    /// use sillmark::statement::{Place, Stated};
    /// let read = |text| Address::read(&Stated::new("zones", text, Place::Option("option --zones".into())));
    /// assert_eq!(
    ///     read("https://example.org/zones?token=abc&limit=5")?.to_string(),
    ///     "https://example.org/zones?token=…&limit=5"
    /// );
    /// assert!(read("ftp://example.org/zones").is_err());
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        const ACCEPTED: &str = "an address such as https://example.org/collections/zones";
        let text = stated.text().trim();
        let hidden = stated.with_text(disguised(text));
        let refuse = |problem: &str| hidden.refuse(problem, ACCEPTED);
        if text.contains(['{', '}']) {
            return Err(refuse("it is a pattern: fill in what is in braces"));
        }
        let url =
            Url::parse(text).map_err(|error| refuse(&format!("it is no address: {error}")))?;
        if !url.username().is_empty() || url.password().is_some() {
            return Err(refuse(
                "it comes with a user's name or password, which would stand in logs and caches",
            ));
        }
        if !matches!(url.scheme(), "http" | "https") {
            return Err(refuse("it is neither http nor https"));
        }
        if !text.contains("://") {
            return Err(refuse("behind its scheme stand :// and a host"));
        }
        if url.host_str().is_none() {
            return Err(refuse("it names no host"));
        }
        Ok(Self(url))
    }

    /// The address as it is asked for.
    #[must_use]
    pub const fn url(&self) -> &Url {
        &self.0
    }
}

impl fmt::Display for Address {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&shown(&self.0))
    }
}
