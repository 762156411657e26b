//! Links of a document of OGC API (OGC 17-069r4, section 5.2).

use reqwest::Url;
use serde::Deserialize;

use crate::service::ServiceError;
use crate::service::features::inquiry::unfit;

/// Where a document leads.
#[derive(Clone, Debug, Deserialize)]
pub(super) struct Link {
    #[serde(default)]
    pub(super) href: String,
    #[serde(default)]
    pub(super) rel: String,
    #[serde(rename = "type")]
    pub(super) kind: Option<String>,
    pub(super) title: Option<String>,
}

/// The link of one of the relations, of several the one to JSON.
pub(super) fn find<'links>(links: &'links [Link], relations: &[&str]) -> Option<&'links Link> {
    links
        .iter()
        .filter(|link| relations.contains(&link.rel.as_str()) && !link.href.is_empty())
        .min_by_key(|link| strangeness(link.kind.as_deref()))
}

/// Where a link leads.
pub(super) fn follow(base: &Url, link: &Link) -> Result<Url, ServiceError> {
    let mut url = base.join(&link.href).map_err(|error| {
        let (rel, href) = (&link.rel, &link.href);
        unfit(
            base,
            format!("its link {rel:?} is no address: {href:?} ({error})"),
        )
    })?;
    url.set_fragment(None);
    Ok(url)
}

/// How far a kind of answer is from what is read here.
fn strangeness(kind: Option<&str>) -> u8 {
    let kind = kind.map(|kind| kind.split(';').next().unwrap_or(kind).trim());
    match kind {
        Some("application/geo+json") => 0,
        Some("application/json" | "application/schema+json") => 1,
        None => 2,
        Some(_) => 3,
    }
}
