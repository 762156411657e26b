//! Features of a layer that a service serves.

mod degree_box;
mod gathered;
mod geoservices;
mod inquiry;
mod json;
mod layer_address;
mod needed;
mod ogc;
mod own_parameters;
mod served;
mod shape;

pub use degree_box::DegreeBox;
pub use layer_address::LayerAddress;
pub use served::{ServedFeature, ServedLayer};

use self::needed::Needed;
use super::secret::Secrets;
use super::{Connection, ServiceError};

/// The features of a layer that meet any of the boxes.
///
/// An address with `FeatureServer` or `MapServer` in its path is a GeoServices REST service, any
/// other one OGC API - Features. The layer is the named one, or the only one, or the only one
/// with the needed attributes. `needed` are lists of names of attributes, of each of which the
/// layer must have one, upper or lower case.
///
/// # Errors
/// [`ServiceError`] where the layer is not found or lacks an attribute, where an answer is not
/// what the protocol says, and where fewer or other features come than the service says
/// there are.
pub async fn features(
    connection: &Connection,
    layer: &LayerAddress,
    boxes: &[DegreeBox],
    needed: &[&[String]],
) -> Result<ServedLayer, ServiceError> {
    let needed = Needed(needed);
    let outcome = if geoservices::is_meant(layer.address.url()) {
        geoservices::features(connection, layer, boxes, needed).await
    } else {
        ogc::features(connection, layer, boxes, needed).await
    };
    // Whatever is told of answers may repeat what was asked.
    let secrets = Secrets::of(layer.address.url());
    match connection.settle(outcome) {
        Ok(served) => Ok(served.without(&secrets)),
        Err(error) => Err(error.without(&secrets)),
    }
}

/// As [`features`], for callers that do not wait for several things at once.
///
/// # Errors
/// As [`features`], and [`ServiceError::Client`] where no request can be made.
pub fn features_blocking(
    connection: &Connection,
    layer: &LayerAddress,
    boxes: &[DegreeBox],
    needed: &[&[String]],
) -> Result<ServedLayer, ServiceError> {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(|error| ServiceError::Client(error.to_string()))?;
    runtime.block_on(features(connection, layer, boxes, needed))
}
