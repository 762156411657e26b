//! An address that a user names.

use std::fmt;

use reqwest::Url;

use crate::statement::{Stated, StatementError};

/// The address of a service: `http` or `https`, with a host, without a user's name or password.
///
/// It is shown with the values of its keys hidden, so that no log or report tells them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Address(Url);

/// Names of parameters whose values are nobody else's business.
const SECRET: [&str; 7] = [
    "access_token",
    "api_key",
    "apikey",
    "f_key",
    "key",
    "subscription-key",
    "token",
];

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
        let scheme = text.split_once("://").map(|(scheme, _)| scheme);
        scheme.is_some_and(|scheme| {
            !scheme.is_empty() && scheme.chars().all(|letter| letter.is_ascii_alphanumeric())
        })
    }

    /// Reads an address.
    ///
    /// # Errors
    /// [`StatementError`] for another scheme than `http` and `https`, an address without a host,
    /// and one with a user's name or password in it.
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
        let url = Url::parse(text)
            .map_err(|error| stated.refuse(format!("it is no address: {error}"), ACCEPTED))?;
        if !url.username().is_empty() || url.password().is_some() {
            let hidden = Stated::new("address", shown(&url), stated.place().clone());
            return Err(hidden.refuse(
                "it comes with a user's name or password, which would stand in logs and caches",
                ACCEPTED,
            ));
        }
        if !matches!(url.scheme(), "http" | "https") {
            return Err(stated.refuse("it is neither http nor https", ACCEPTED));
        }
        if url.host_str().is_none() {
            return Err(stated.refuse("it names no host", ACCEPTED));
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

/// An address as logs and reports may show it.
pub(super) fn shown(url: &Url) -> String {
    let mut shown = url.clone();
    // Only what cannot carry them refuses, and then there is nothing to hide.
    let _ = shown.set_username("");
    let _ = shown.set_password(None);
    shown.set_fragment(None);
    let Some(query) = url.query() else {
        return shown.to_string();
    };
    let parts: Vec<String> = query
        .split('&')
        .map(|part| match part.split_once('=') {
            Some((name, _)) if is_secret(name) => format!("{name}=…"),
            _ => part.to_owned(),
        })
        .collect();
    shown.set_query(None);
    format!("{shown}?{}", parts.join("&"))
}

fn is_secret(name: &str) -> bool {
    SECRET
        .iter()
        .any(|secret| name.eq_ignore_ascii_case(secret))
}
