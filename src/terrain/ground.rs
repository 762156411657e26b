//! The ground at a point, or why there is none.

use std::sync::Arc;

use crate::quantity::Elevation;

/// The height of the ground at a point.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// The elevation, bilinear between the four nearest cell centres.
    pub elevation: Elevation,
    /// Whether any of the 4 × 4 cells around the point has no value: the shore of a void is
    /// often the shore of a building or of water.
    pub no_data_nearby: bool,
    /// Whether the point lies in the outer half cell of the raster, where there is nothing
    /// to interpolate with and the value is that of the edge.
    pub at_rim: bool,
    /// File name of the raster that answered.
    pub source: Arc<str>,
}

/// Why a raster has no ground at a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Gap {
    /// A cell that counts has no value.
    #[error("the terrain has no value there")]
    Void,
    /// The point lies outside the raster.
    #[error("the terrain does not reach there")]
    Outside,
}
