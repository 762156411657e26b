//! What a service gives.

use geo::Geometry;
use serde_json::{Map, Value};

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
