//! What a service gives.

use geo::Geometry;
use serde_json::{Map, Value};

use crate::service::secret::Secrets;

/// The features of a layer that meet the boxes asked for, whole: as many as the service says
/// there are, each once.
#[derive(Clone, Debug, PartialEq)]
pub struct ServedLayer {
    /// The layer's name, as the service says it.
    pub name: String,
    /// Where it comes from, without keys.
    pub address: String,
    /// When the oldest part of it was fetched, or last confirmed, as HTTP writes a date.
    pub fetched: String,
    /// What the service says of the right to use it, in its words.
    pub licence: Option<String>,
    /// The coordinate reference system of the geometry, by an authority's code such as
    /// `OGC:CRS84` or `EPSG:27700`.
    pub crs: String,
    /// The names of the attributes, in the service's order; those of features that no list
    /// names follow.
    pub fields: Vec<String>,
    /// The features, in the order of the service.
    pub features: Vec<ServedFeature>,
    /// What was noticed on the way, in words: a box that was ignored, a page that was shorter
    /// than asked for.
    pub remarks: Vec<String>,
}

impl ServedLayer {
    /// The same without secrets in what is told of it, and in the addresses among its attributes.
    /// Other attributes are data, which may hold such a word by chance.
    pub(super) fn without(mut self, secrets: &Secrets) -> Self {
        let told = [&mut self.address].into_iter();
        for text in told.chain(&mut self.licence).chain(&mut self.remarks) {
            *text = secrets.blotted(text);
        }
        let attributes = self
            .features
            .iter_mut()
            .flat_map(|one| one.attributes.values_mut());
        for value in attributes {
            if let Value::String(text) = value
                && text.contains("://")
            {
                *text = secrets.blotted(text);
            }
        }
        self
    }
}

/// One feature.
#[derive(Clone, Debug, PartialEq)]
pub struct ServedFeature {
    /// How the service knows it.
    pub id: String,
    /// Its geometry in the layer's system, in the order of axes that the system's authority
    /// states for an `EPSG` code and longitude first for `OGC:CRS84`.
    pub geometry: Option<Geometry<f64>>,
    /// Its attributes.
    pub attributes: Map<String, Value>,
}
