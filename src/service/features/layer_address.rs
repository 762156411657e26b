//! The address of a layer.

use std::borrow::Cow;

use percent_encoding::percent_decode_str;

use crate::service::Address;
use crate::service::secret::disguised;
use crate::statement::{Stated, StatementError};

/// A service and, where the address does not lead to a layer itself, the layer's name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayerAddress {
    /// The service, or the layer itself.
    pub address: Address,
    /// The layer's name.
    pub layer: Option<String>,
}

/// The last parts of a path behind which a colon may stand.
const SERVERS: [&str; 2] = ["/featureserver:", "/mapserver:"];

impl LayerAddress {
    /// Reads `ADDRESS[#LAYER]`. A colon serves as well behind a path that ends in
    /// `FeatureServer` or `MapServer`. The name of the layer may stand as it is, or encoded as a
    /// browser shows it (`Flood%20Zones`); a `%` that encodes nothing is one.
    ///
    /// # Errors
    /// As [`Address::read`], and for a layer's name that is blank or given twice.
    ///
    /// ```
    /// use sillmark::service::LayerAddress;
    /// use sillmark::statement::{Place, Stated};
    /// let text = "https://example.org/rest/services/flood/FeatureServer:Flood Zones";
    /// let stated = Stated::new("zones", text, Place::Option("option --zones".into()));
    /// let read = LayerAddress::read(&stated)?;
    /// assert_eq!(read.address.url().path(), "/rest/services/flood/FeatureServer");
    /// assert_eq!(read.layer.as_deref(), Some("Flood Zones"));
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        let text = stated.text().trim();
        let (before, behind_hash) = match text.split_once('#') {
            Some((before, layer)) => (before, Some(layer)),
            None => (text, None),
        };
        let (address, behind_colon) = without_colon(before);
        let address = match behind_hash {
            // Else half of a password that has a # in it would be shown as a host.
            Some(behind)
                if behind.contains('@')
                    && Address::read(&stated.with_text(address.as_str())).is_err() =>
            {
                Address::read(stated)
            }
            _ => Address::read(&stated.with_text(address)),
        }?;
        // From here on the address is shown without its keys.
        let shown = stated.with_text(address.to_string());
        let layer = match (behind_hash, behind_colon) {
            (Some(_), Some(_)) => {
                return Err(shown.refuse(
                    "the layer's name stands behind a colon and behind a #",
                    "one of the two",
                ));
            }
            (layer, None) | (None, layer) => layer.map(str::trim),
        };
        let is_query = |layer: &str| {
            layer
                .split_once('?')
                .is_some_and(|(_, query)| query.contains('='))
        };
        if behind_hash.is_some_and(is_query) {
            return Err(stated.with_text(disguised(text)).refuse(
                "parameters stand behind the layer's name",
                "ADDRESS?NAME=VALUE#LAYER",
            ));
        }
        if layer.is_some_and(str::is_empty) {
            return Err(shown.refuse("the layer's name is blank", "ADDRESS#LAYER, or ADDRESS"));
        }
        Ok(Self {
            address,
            layer: layer.map(decoded),
        })
    }
}

/// A layer's name without what a browser encodes. What is not UTF-8 then was meant as it stands.
fn decoded(name: &str) -> String {
    let decoded = percent_decode_str(name).decode_utf8();
    decoded.map_or_else(|_| name.to_owned(), Cow::into_owned)
}

/// An address, and the layer behind a colon at the end of its path. What a query says belongs
/// to the address.
fn without_colon(text: &str) -> (String, Option<&str>) {
    let (path, query) = match text.find('?') {
        Some(at) => text.split_at(at),
        None => (text, ""),
    };
    let lower = path.to_ascii_lowercase();
    let found = SERVERS
        .iter()
        .find_map(|server| Some(lower.find(server)? + server.len()));
    match found {
        Some(end) => (format!("{}{query}", &path[..end - 1]), Some(&path[end..])),
        None => (text.to_owned(), None),
    }
}
