//! One page of features (OGC 17-069r4, section 7.15).

use reqwest::Url;
use serde::Deserialize;
use serde_json::{Map, Value};

use super::links::Link;
use crate::service::connection::Unread;
use crate::service::features::inquiry::{Inquiry, Question, Told};
use crate::service::features::json;
use crate::service::features::shape::{self, Axes};
use crate::service::{Entry, ServiceError};

/// A page, its features read.
pub(super) struct Page {
    pub(super) features: Vec<PageFeature>,
    pub(super) links: Vec<Link>,
    pub(super) number_matched: Option<u64>,
    pub(super) number_returned: Option<u64>,
}

/// A feature, which may have no id.
pub(super) struct PageFeature {
    pub(super) id: Option<String>,
    pub(super) geometry: Option<geo::Geometry<f64>>,
    pub(super) attributes: Map<String, Value>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Collected {
    features: Vec<geojson::Feature>,
    #[serde(default)]
    links: Vec<Link>,
    number_matched: Option<u64>,
    number_returned: Option<u64>,
}

/// Asks for a page; its positions have these axes.
pub(super) async fn ask(
    inquiry: &Inquiry<'_>,
    url: Url,
    axes: Axes,
) -> Result<Told<Page>, ServiceError> {
    let question = Question {
        url,
        form: None,
        accept: "application/geo+json, application/json",
    };
    inquiry.ask(question, |entry| read(entry, axes)).await
}

fn read(entry: &Entry, axes: Axes) -> Result<Page, Unread> {
    let collected: Collected = json::read(entry)?;
    let features = collected.features.into_iter().map(|feature| {
        let id = feature.id.map(|id| id_text(&id));
        let geometry = feature
            .geometry
            .map(|shape| shape::geometry(&shape.value, axes));
        let geometry = geometry
            .transpose()
            .map_err(|problem| ServiceError::Unfit {
                address: entry.address.clone(),
                problem: match &id {
                    Some(id) => format!("feature {id:?}: {problem}"),
                    None => problem,
                },
            })?;
        Ok(PageFeature {
            id,
            geometry: geometry.flatten(),
            attributes: feature.properties.unwrap_or_default(),
        })
    });
    Ok(Page {
        features: features.collect::<Result<_, ServiceError>>()?,
        links: collected.links,
        number_matched: collected.number_matched,
        number_returned: collected.number_returned,
    })
}

fn id_text(id: &geojson::feature::Id) -> String {
    match id {
        geojson::feature::Id::String(text) => text.clone(),
        geojson::feature::Id::Number(number) => number.to_string(),
    }
}

/// Sets parameters of an address in place of those of the same name.
pub(super) fn set(url: &mut Url, parameters: &[(&str, String)]) {
    let others: Vec<(String, String)> = url
        .query_pairs()
        .into_owned()
        .filter(|(name, _)| !parameters.iter().any(|(ours, _)| name == ours))
        .collect();
    url.query_pairs_mut()
        .clear()
        .extend_pairs(others)
        .extend_pairs(parameters);
}
