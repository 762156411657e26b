//! Features of layers: from servers that keep to their protocol, and from those that do not.

mod geoservices;
pub(crate) mod geoservices_double;
mod geoservices_hostile;
mod geoservices_shapes;
mod ogc;
mod ogc_crs;
mod ogc_degrees;
pub(crate) mod ogc_double;
mod ogc_hostile;
mod ogc_told;
mod real;

use std::time::Duration;

use geo::Rect;
use sillmark::service::{
    Answers, Connection, DegreeBox, LayerAddress, Limits, ServedLayer, features_blocking,
};
use sillmark::statement::{Place, Stated};

use super::server::Server;

/// Limits that end a test in time.
pub(crate) fn limits() -> Limits {
    Limits {
        answer: Duration::from_secs(4),
        bytes: 1 << 22,
        retries: 2,
        pause: Duration::from_millis(5),
        longest_pause: Duration::from_millis(50),
        requests: 500,
        whole: Duration::from_secs(30),
        ..Limits::default()
    }
}

pub(crate) fn layer(url: &str) -> LayerAddress {
    let stated = Stated::new("zones", url, Place::Option("option --zones".into()));
    LayerAddress::read(&stated).unwrap()
}

fn degrees(low: (f64, f64), high: (f64, f64)) -> DegreeBox {
    DegreeBox(Rect::new(low, high))
}

pub(crate) fn everywhere() -> DegreeBox {
    degrees((-180.0, -90.0), (180.0, 90.0))
}

/// What an address gives, so many features at a time; of an error its message.
fn ask(
    url: &str,
    boxes: &[DegreeBox],
    needed: &[&[String]],
    page: usize,
) -> Result<ServedLayer, String> {
    let layer = layer(url);
    let limits = Limits { page, ..limits() };
    let connection = Connection::open(&layer.address, Answers::Fetched, limits)
        .map_err(|error| error.to_string())?;
    features_blocking(&connection, &layer, boxes, needed).map_err(|error| error.to_string())
}

/// All that a path of a server gives; of an error its message, without the port that changes.
fn all(server: &Server, path: &str) -> Result<ServedLayer, String> {
    some(server, path, &[everywhere()], 1000)
}

fn some(
    server: &Server,
    path: &str,
    boxes: &[DegreeBox],
    page: usize,
) -> Result<ServedLayer, String> {
    ask(&server.at(path), boxes, &[], page)
        .map_err(|message| message.replace(&server.at(""), "HOST"))
}

fn ids(layer: &ServedLayer) -> Vec<&str> {
    layer
        .features
        .iter()
        .map(|feature| feature.id.as_str())
        .collect()
}

/// That a message says something.
fn assert_says(outcome: Result<ServedLayer, String>, said: &str) {
    let message = outcome.unwrap_err();
    assert!(message.contains(said), "{message}\nshould say: {said}");
}
