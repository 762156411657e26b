//! What a service says of one layer.

use reqwest::Url;
use serde::Deserialize;

use super::answer;
use super::service::Listed;
use super::target::Target;
use crate::service::ServiceError;
use crate::service::features::inquiry::{Inquiry, Question, unfit};

/// A layer of features.
pub(super) struct Layer {
    pub(super) name: String,
    pub(super) url: Url,
    pub(super) fields: Vec<Field>,
    /// The name of the field that holds the object ids.
    pub(super) id_field: Option<String>,
    /// How many features the service gives at a time.
    pub(super) most: Option<usize>,
    /// Whether it gives GeoJSON; `None` where it does not say.
    pub(super) gives_geojson: Option<bool>,
    pub(super) licence: Option<String>,
    /// The system that its coordinates are kept in, by the number of its `wkid`.
    pub(super) stored: Option<i64>,
}

/// An attribute.
#[derive(Clone, Deserialize)]
pub(super) struct Field {
    pub(super) name: String,
    #[serde(rename = "type", default)]
    pub(super) kind: String,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Told {
    id: Option<i64>,
    name: Option<String>,
    fields: Option<Vec<Field>>,
    object_id_field: Option<String>,
    max_record_count: Option<usize>,
    supported_query_formats: Option<String>,
    copyright_text: Option<String>,
    extent: Option<Extent>,
    source_spatial_reference: Option<SpatialReference>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Extent {
    spatial_reference: Option<SpatialReference>,
}

/// A coordinate reference system by its numbers; the later one is the `EPSG`'s where there is
/// one.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct SpatialReference {
    wkid: Option<i64>,
    latest_wkid: Option<i64>,
}

impl SpatialReference {
    pub(super) fn number(&self) -> Option<i64> {
        self.latest_wkid.or(self.wkid)
    }
}

impl Layer {
    /// The names of its attributes.
    pub(super) fn names(&self) -> Vec<String> {
        let names = self.fields.iter().map(|field| field.name.clone());
        names.collect()
    }
}

/// Asks a service about one of the layers that it lists.
pub(super) async fn ask(
    inquiry: &Inquiry<'_>,
    target: &Target,
    listed: &Listed,
) -> Result<Layer, ServiceError> {
    let url = target.layer(listed.id);
    let question = Question {
        url: url.clone(),
        form: None,
        accept: "application/json",
    }
    .with(&[("f", "json".to_owned())]);
    let told: Told = inquiry.ask(question, answer::read).await?.value;
    let name = told.name.unwrap_or_else(|| listed.name.clone());
    let is_other = told.id.is_some_and(|id| id != listed.id) || name != listed.name;
    if is_other {
        return Err(unfit(
            &url,
            format!(
                "asked about layer {} {:?}, it answers about layer {} {name:?}",
                listed.id,
                listed.name,
                told.id.unwrap_or(listed.id),
            ),
        ));
    }
    let fields = told.fields.unwrap_or_default();
    let id_field = told.object_id_field.filter(|name| !name.is_empty());
    let by_kind = fields.iter().find(|field| field.kind == "esriFieldTypeOID");
    let formats = told.supported_query_formats.as_deref();
    let stored = told
        .source_spatial_reference
        .or_else(|| told.extent.and_then(|extent| extent.spatial_reference));
    Ok(Layer {
        name,
        url,
        id_field: id_field.or_else(|| by_kind.map(|field| field.name.clone())),
        fields,
        most: told.max_record_count.filter(|most| *most > 0),
        gives_geojson: formats.map(|formats| {
            let mut formats = formats.split(',').map(str::trim);
            formats.any(|format| format.eq_ignore_ascii_case("geoJSON"))
        }),
        licence: told.copyright_text.filter(|text| !text.trim().is_empty()),
        stored: stored.and_then(|stored| stored.number()),
    })
}
