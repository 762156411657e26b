//! What goes wrong between a service and a file.

use crate::crs::CrsError;
use crate::gis::GisError;
use crate::service::ServiceError;

/// Why what a service holds is not on the disk.
#[derive(Debug, thiserror::Error)]
pub enum CollectError {
    /// The service does not give it.
    #[error(transparent)]
    Service(#[from] ServiceError),
    /// The file cannot be written.
    #[error(transparent)]
    File(#[from] GisError),
    /// The layer's coordinate reference system is not known here.
    #[error("{address}: layer {layer:?}: {source}")]
    Crs {
        /// The service.
        address: String,
        /// The layer.
        layer: String,
        /// What is wrong with it.
        source: CrsError,
    },
    /// None of a layer's features lies where they were asked for.
    #[error(
        "{address}: layer {layer:?}: none of its {features} features lies where they were asked for, \
         though the service says so; their coordinates are not those of {crs}; none of it is used"
    )]
    Elsewhere {
        /// The service.
        address: String,
        /// The layer.
        layer: String,
        /// How many came.
        features: usize,
        /// The system that the service states.
        crs: String,
    },
    /// A feature is something else than what the layer is read for.
    #[error(
        "{address}: layer {layer:?}, feature {feature:?}: it is a {found}; accepted: {accepted}"
    )]
    Shape {
        /// The service.
        address: String,
        /// The layer.
        layer: String,
        /// The feature.
        feature: String,
        /// What it is.
        found: &'static str,
        /// What it should be.
        accepted: &'static str,
    },
}
