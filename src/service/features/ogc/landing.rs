//! From the address that a user names to one collection.

use std::collections::HashSet;

use reqwest::Url;
use serde::Deserialize;
use serde::de::IgnoredAny;

use super::choice::{Chosen, choose};
use super::collection::{Collection, Described, licence};
use super::links::{self, Link};
use crate::service::connection::Unread;
use crate::service::features::inquiry::{Inquiry, Question, Told, unfit};
use crate::service::features::json;
use crate::service::features::needed::Needed;
use crate::service::{Entry, ServiceError};

/// A document on the way to a collection: the landing page, the list of collections, or a
/// collection.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Signpost {
    #[serde(default)]
    links: Vec<Link>,
    collections: Option<Vec<Described>>,
    /// Systems of the collection, or of all (OGC 18-058r1, requirement 4).
    #[serde(default)]
    crs: Vec<String>,
    id: Option<String>,
    title: Option<String>,
    item_type: Option<String>,
    storage_crs: Option<String>,
}

/// The relations of a list of collections (OGC 17-069r4, table 3, and OGC 19-072).
const DATA: [&str; 3] = [
    "data",
    "http://www.opengis.net/def/rel/ogc/1.0/data",
    "[ogc-rel:data]",
];

/// The collection that is meant: the named one, or the only one, or the only one with the needed
/// attributes.
pub(super) async fn find(
    inquiry: &Inquiry<'_>,
    address: &Url,
    name: Option<&str>,
    needed: Needed<'_>,
) -> Result<Chosen, ServiceError> {
    let start = without_items(address);
    let told = signpost(inquiry, start.clone()).await?;
    if told.value.collections.is_some() {
        let all = list(inquiry, told, None).await?;
        return choose(inquiry, &start, all, name, needed).await;
    }
    if links::find(&told.value.links, &["items"]).is_some() {
        let only = alone(told)?;
        return choose(inquiry, &start, vec![only], name, needed).await;
    }
    let Some(link) = links::find(&told.value.links, &DATA) else {
        return Err(unfit(
            &start,
            "it is neither the landing page of OGC API - Features, nor its collections, nor one \
             of them: no link leads to items or data",
        ));
    };
    let licence = licence(&told.value.links);
    let listed = signpost(inquiry, links::follow(&told.base, link)?).await?;
    let all = list(inquiry, listed, licence).await?;
    choose(inquiry, &start, all, name, needed).await
}

/// All collections that a document lists, and those that follow it.
async fn list(
    inquiry: &Inquiry<'_>,
    first: Told<Signpost>,
    around: Option<String>,
) -> Result<Vec<Collection>, ServiceError> {
    let mut all = Vec::new();
    let mut seen = HashSet::new();
    let mut told = first;
    loop {
        let page = told.value;
        let licence = licence(&page.links).or_else(|| around.clone());
        for described in page.collections.into_iter().flatten() {
            let base = told.base.clone();
            all.push(Collection::new(
                described,
                base,
                &page.crs,
                licence.as_ref(),
            ));
        }
        let Some(next) = links::find(&page.links, &["next"]) else {
            break;
        };
        let next = links::follow(&told.base, next)?;
        if !seen.insert(next.clone()) {
            return Err(unfit(&next, "the list of collections leads back to itself"));
        }
        told = signpost(inquiry, next).await?;
    }
    all.retain(Collection::holds_features);
    Ok(all)
}

async fn signpost(inquiry: &Inquiry<'_>, url: Url) -> Result<Told<Signpost>, ServiceError> {
    let question = Question {
        url,
        form: None,
        accept: "application/json",
    };
    let read = |entry: &Entry| {
        if is_geojson_file(entry) {
            return Err(Unread::Unfit(ServiceError::Unfit {
                address: entry.address.clone(),
                problem: "it is a GeoJSON file, not a service: download it and name the file"
                    .to_owned(),
            }));
        }
        Ok(json::read(entry)?)
    };
    inquiry.ask(question, read).await
}

/// Features that lead nowhere else.
#[derive(Deserialize)]
struct Plain {
    #[serde(rename = "type")]
    kind: String,
    links: Option<IgnoredAny>,
    collections: Option<IgnoredAny>,
}

fn is_geojson_file(entry: &Entry) -> bool {
    json::read::<Plain>(entry).is_ok_and(|plain| {
        matches!(plain.kind.as_str(), "FeatureCollection" | "Feature")
            && plain.links.is_none()
            && plain.collections.is_none()
    })
}

/// The collection that a document describes.
fn alone(told: Told<Signpost>) -> Result<Collection, ServiceError> {
    let Told { value, base, .. } = told;
    let Some(id) = value.id else {
        return Err(unfit(&base, "the collection has no id"));
    };
    let described = Described {
        id,
        title: value.title,
        links: value.links,
        item_type: value.item_type,
        crs: value.crs,
        storage_crs: value.storage_crs,
    };
    Ok(Collection::new(described, base, &[], None))
}

/// The address of a collection for that of its items, which stand under it (OGC 17-069r4,
/// requirement 17); what the user asks for of them is none of its business.
fn without_items(address: &Url) -> Url {
    let mut start = address.clone();
    start.set_query(None);
    let path = address.path().trim_end_matches('/');
    if let Some(collection) = path.strip_suffix("/items") {
        start.set_path(collection);
    }
    start
}
