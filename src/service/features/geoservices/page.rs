//! Features of one answer, in GeoJSON or in the protocol's own JSON.

use std::sync::atomic::{AtomicBool, Ordering};

use serde::Deserialize;
use serde_json::{Map, Value};

use super::layer::{Layer, SpatialReference};
use super::query::{self, Parameters};
use super::shape::Shape;
use super::{answer, dates};
use crate::service::connection::Unread;
use crate::service::features::ServedFeature;
use crate::service::features::inquiry::{Inquiry, is_not_served};
use crate::service::features::shape::{self, Axes};
use crate::service::{Entry, ServiceError};

/// Asks for features in GeoJSON, and in the protocol's own JSON where the service does not give
/// that.
pub(super) struct Asking<'run> {
    pub(super) inquiry: &'run Inquiry<'run>,
    pub(super) layer: &'run Layer,
    no_geojson: AtomicBool,
}

/// A feature under its object id.
pub(super) type Numbered = (i64, ServedFeature);

impl<'run> Asking<'run> {
    pub(super) fn new(inquiry: &'run Inquiry<'run>, layer: &'run Layer) -> Self {
        Self {
            inquiry,
            layer,
            no_geojson: AtomicBool::new(layer.gives_geojson == Some(false)),
        }
    }

    /// The features that parameters choose.
    pub(super) async fn features(
        &self,
        choice: &Parameters,
    ) -> Result<Vec<Numbered>, ServiceError> {
        let (inquiry, layer) = (self.inquiry, self.layer);
        if !self.no_geojson.load(Ordering::Relaxed) {
            let parameters = [choice.as_slice(), &query::whole("geojson")].concat();
            let question = query::question(inquiry, layer, &parameters);
            match inquiry.ask(question, |entry| geojson(entry, layer)).await {
                Ok(told) => return Ok(told.value),
                // Without the network some may be kept in the one form, some in the other.
                Err(ServiceError::NotKept { .. }) => {}
                Err(error) if is_not_served(&error) => {
                    self.no_geojson.store(true, Ordering::Relaxed);
                }
                Err(error) => return Err(error),
            }
        }
        let parameters = [choice.as_slice(), &query::whole("json")].concat();
        let question = query::question(inquiry, layer, &parameters);
        let told = inquiry.ask(question, |entry| json(entry, layer)).await?;
        Ok(told.value)
    }
}

#[derive(Deserialize)]
struct Collected {
    features: Vec<geojson::Feature>,
}

fn geojson(entry: &Entry, layer: &Layer) -> Result<Vec<Numbered>, Unread> {
    let collected: Collected = answer::read(entry)?;
    let features = collected.features.into_iter().map(|feature| {
        let number = match &feature.id {
            Some(geojson::feature::Id::Number(number)) => number.as_i64(),
            Some(geojson::feature::Id::String(text)) => text.parse().ok(),
            None => None,
        };
        let attributes = feature.properties.unwrap_or_default();
        let geometry = feature
            .geometry
            .map(|given| shape::geometry(&given.value, Axes::LongitudeFirst));
        let geometry = geometry.transpose().map(Option::flatten);
        numbered(entry, layer, number, attributes, geometry)
    });
    features.collect()
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Set {
    features: Vec<SetFeature>,
    spatial_reference: Option<SpatialReference>,
}

#[derive(Deserialize)]
struct SetFeature {
    #[serde(default)]
    attributes: Map<String, Value>,
    geometry: Option<Shape>,
}

fn json(entry: &Entry, layer: &Layer) -> Result<Vec<Numbered>, Unread> {
    let set: Set = answer::read(entry)?;
    let system = set.spatial_reference.and_then(|system| system.number());
    if let Some(other) = system.filter(|number| *number != 4326) {
        return Err(Unread::Unfit(ServiceError::Unfit {
            address: entry.address.clone(),
            problem: format!("it answers in the coordinate reference system {other}, not in 4326"),
        }));
    }
    let features = set.features.into_iter().map(|feature| {
        let geometry = feature.geometry.map(Shape::read).transpose();
        let geometry = geometry.map(Option::flatten);
        numbered(entry, layer, None, feature.attributes, geometry)
    });
    features.collect()
}

/// A feature under its object id: that among its attributes, or else the one beside them.
fn numbered(
    entry: &Entry,
    layer: &Layer,
    beside: Option<i64>,
    mut attributes: Map<String, Value>,
    geometry: Result<Option<geo::Geometry<f64>>, String>,
) -> Result<Numbered, Unread> {
    let unfit = |problem: String| {
        Unread::Unfit(ServiceError::Unfit {
            address: entry.address.clone(),
            problem,
        })
    };
    let among = layer.id_field.as_ref().and_then(|field| {
        let (_, value) = attributes
            .iter()
            .find(|(name, _)| name.eq_ignore_ascii_case(field))?;
        value.as_i64()
    });
    let number = among
        .or(beside)
        .ok_or_else(|| unfit("a feature comes without its object id".to_owned()))?;
    let geometry = geometry.map_err(|problem| unfit(format!("feature {number}: {problem}")))?;
    dates::write(&mut attributes, &layer.fields);
    let feature = ServedFeature {
        id: number.to_string(),
        geometry,
        attributes,
    };
    Ok((number, feature))
}
