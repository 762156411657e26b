//! Layers written for the tests.

use std::path::{Path, PathBuf};

use serde_json::{Map, Value, json};
use sillmark::hazard::{HazardError, ZoneMap, ZoneStatement, read_zones};
use sillmark::site::Location;

/// A feature with attributes and a geometry.
pub(crate) fn feature(attributes: &Value, geometry: &Value) -> Value {
    json!({"type": "Feature", "properties": attributes, "geometry": geometry})
}

/// A square of `side` degrees with its south-west corner at −74 + `east`, 40 + `north`.
pub(crate) fn square(east: f64, north: f64, side: f64) -> Vec<[f64; 2]> {
    let (x, y) = (-74.0 + east, 40.0 + north);
    vec![
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
        [x, y],
    ]
}

pub(crate) fn polygon(rings: &[Vec<[f64; 2]>]) -> Value {
    json!({"type": "Polygon", "coordinates": rings})
}

/// Writes features as `GeoJSON`.
pub(crate) fn layer(folder: &Path, features: &[Value]) -> PathBuf {
    let collection = json!({"type": "FeatureCollection", "features": features});
    crate::support::write(folder, "zones.geojson", &collection.to_string())
}

/// Reads features without a statement.
pub(crate) fn map(features: &[Value]) -> Result<ZoneMap, HazardError> {
    let scratch = tempfile::tempdir().unwrap();
    read_zones(
        &layer(scratch.path(), features),
        None,
        &ZoneStatement::default(),
        None,
    )
}

/// A zone of one code over a square.
pub(crate) fn zone(code: &str, east: f64, north: f64, side: f64) -> Value {
    feature(
        &json!({"FLD_ZONE": code}),
        &polygon(&[square(east, north, side)]),
    )
}

/// A place so many degrees from −74, 40.
pub(crate) fn place(east: f64, north: f64) -> Location {
    Location::from_degrees(-74.0 + east, 40.0 + north).unwrap()
}

/// The codes at a place, the worst first.
pub(crate) fn codes(map: &ZoneMap, location: Location) -> Vec<String> {
    let here = map.at(location).unwrap();
    here.zones.iter().map(|zone| zone.code.clone()).collect()
}

/// Every role empty but those given.
pub(crate) fn attributes(pairs: &[(&str, Value)]) -> Value {
    let pairs = pairs
        .iter()
        .map(|(name, value)| ((*name).to_owned(), value.clone()));
    Value::Object(pairs.collect::<Map<_, _>>())
}
