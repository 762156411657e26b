//! The names of a collection's attributes, as early as the service says them.

use std::fmt;

use reqwest::Url;
use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, Visitor};
use serde_json::Value;

use super::collection::Collection;
use super::links;
use super::page::{self, Page};
use crate::service::ServiceError;
use crate::service::features::inquiry::{Inquiry, Question, is_not_served};
use crate::service::features::json;
use crate::service::features::needed::Needed;
use crate::service::features::shape::Axes;

/// What lists attributes: the schema (OGC API - Features part 5), which has all, then the
/// queryables (part 3), which may be fewer.
const LISTS: [[&str; 2]; 2] = [
    [
        "http://www.opengis.net/def/rel/ogc/1.0/schema",
        "[ogc-rel:schema]",
    ],
    [
        "http://www.opengis.net/def/rel/ogc/1.0/queryables",
        "[ogc-rel:queryables]",
    ],
];

/// The names that the service lists; where that is too little, those on its first feature too.
pub(super) async fn listed(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
    needed: Needed<'_>,
) -> Result<Vec<String>, ServiceError> {
    let mut names = Vec::new();
    for relations in LISTS {
        if !names.is_empty() && needed.lacking(&names).is_none() {
            return Ok(names);
        }
        let Some(link) = links::find(&collection.described.links, &relations) else {
            continue;
        };
        match schema(inquiry, links::follow(&collection.base, link)?).await {
            Ok(more) => merge(&mut names, more),
            Err(error) if is_not_served(&error) => {}
            Err(error) => return Err(error),
        }
    }
    if needed.lacking(&names).is_some() {
        match of_first_feature(inquiry, collection).await {
            Ok(more) => merge(&mut names, more),
            Err(error) if is_not_served(&error) => {}
            Err(error) => return Err(error),
        }
    }
    Ok(names)
}

fn merge(names: &mut Vec<String>, more: Vec<String>) {
    for name in more {
        if !names.contains(&name) {
            names.push(name);
        }
    }
}

async fn schema(inquiry: &Inquiry<'_>, url: Url) -> Result<Vec<String>, ServiceError> {
    let question = Question {
        url,
        form: None,
        accept: "application/schema+json, application/json",
    };
    let told = inquiry
        .ask(question, |entry| Ok(json::read::<Schema>(entry)?))
        .await?;
    Ok(told.value.properties.0)
}

async fn of_first_feature(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
) -> Result<Vec<String>, ServiceError> {
    let mut url = collection.items()?;
    page::set(&mut url, &[("limit", "1".to_owned())]);
    let page: Page = page::ask(inquiry, url, Axes::Any).await?.value;
    let first = page.features.into_iter().next();
    Ok(first.map_or_else(Vec::new, |feature| {
        feature.attributes.keys().cloned().collect()
    }))
}

#[derive(Deserialize)]
struct Schema {
    properties: Properties,
}

/// The names of properties that are no geometry, in the order of the document.
struct Properties(Vec<String>);

impl<'de> Deserialize<'de> for Properties {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Names;

        impl<'de> Visitor<'de> for Names {
            type Value = Properties;

            fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
                formatter.write_str("properties by name")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Properties, A::Error> {
                let mut names = Vec::new();
                while let Some((name, property)) = map.next_entry::<String, Value>()? {
                    if !is_geometry(&property) {
                        names.push(name);
                    }
                }
                Ok(Properties(names))
            }
        }

        deserializer.deserialize_map(Names)
    }
}

fn is_geometry(property: &Value) -> bool {
    let says = |key: &str, fits: fn(&str) -> bool| {
        property.get(key).and_then(Value::as_str).is_some_and(fits)
    };
    says("x-ogc-role", |role| role.ends_with("geometry"))
        || says("format", |format| format.starts_with("geometry"))
        || says("$ref", |schema| schema.contains("geojson.org/schema/"))
}
