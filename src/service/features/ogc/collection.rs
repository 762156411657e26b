//! A collection of features (OGC 17-069r4, section 7.14; crs: OGC 18-058r1, section 6).

use reqwest::Url;
use serde::Deserialize;

use super::crs::Crs;
use super::links::{self, Link};
use crate::service::ServiceError;

/// What a document says of a collection.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Described {
    pub(super) id: String,
    pub(super) title: Option<String>,
    #[serde(default)]
    pub(super) links: Vec<Link>,
    pub(super) item_type: Option<String>,
    #[serde(default)]
    pub(super) crs: Vec<String>,
    pub(super) storage_crs: Option<String>,
}

/// A collection and where it stands.
#[derive(Clone, Debug)]
pub(super) struct Collection {
    pub(super) described: Described,
    /// Where it is described.
    pub(super) base: Url,
    /// What the service says of the right to use it.
    pub(super) licence: Option<String>,
    /// The systems that it can be had in.
    pub(super) systems: Vec<Crs>,
}

impl Collection {
    /// `shared` are the systems that all collections of the service can be had in, and what it
    /// says of the right to use all.
    pub(super) fn new(
        described: Described,
        base: Url,
        shared: &[String],
        licence: Option<&String>,
    ) -> Self {
        let named = described.crs.iter().flat_map(|name| match name.as_str() {
            // A reference into the document that lists the collections.
            "#/crs" => shared,
            _ => std::slice::from_ref(name),
        });
        let systems = named.filter_map(|name| Crs::read(name)).collect();
        let licence = self::licence(&described.links).or_else(|| licence.cloned());
        Self {
            described,
            base,
            licence,
            systems,
        }
    }

    /// Whether a user may mean it by a name.
    pub(super) fn is_called(&self, name: &str, same: impl Fn(&str, &str) -> bool) -> bool {
        let title = self.described.title.as_deref();
        same(&self.described.id, name) || title.is_some_and(|title| same(title, name))
    }

    pub(super) fn holds_features(&self) -> bool {
        let kind = self.described.item_type.as_deref();
        kind.is_none_or(|kind| kind.eq_ignore_ascii_case("feature"))
            && links::find(&self.described.links, &["items"]).is_some()
    }

    /// Where its features are.
    pub(super) fn items(&self) -> Result<Url, ServiceError> {
        match links::find(&self.described.links, &["items"]) {
            Some(link) => links::follow(&self.base, link),
            None => Err(ServiceError::NoLayers {
                address: self.base.to_string(),
            }),
        }
    }

    /// The system that its coordinates are kept in, where it can be had in that: then no
    /// conversion of the server stands between. WGS 84 is taken with longitude first, which is
    /// no conversion.
    pub(super) fn stored(&self) -> Option<Crs> {
        let stored = Crs::read(self.described.storage_crs.as_deref()?)?;
        let is_fit = !stored.is_wgs84() && stored.code.starts_with("EPSG:");
        let offered = self.systems.iter().find(|crs| crs.code == stored.code)?;
        is_fit.then(|| offered.clone())
    }
}

/// What links say of the right to use something.
pub(super) fn licence(links: &[Link]) -> Option<String> {
    let link = links::find(links, &["license"])?;
    let title = link.title.as_ref().filter(|title| !title.trim().is_empty());
    Some(match title {
        Some(title) => format!("{title} ({})", link.href),
        None => link.href.clone(),
    })
}
