//! The maps that a flood level is read from, beside the zones.

use crate::hazard::LevelLineMap;
use crate::quantity::AnnualChance;
use crate::terrain::{Dem, DepthRaster};

/// Everything that states water levels or depths.
#[derive(Default)]
pub struct LevelMaps {
    /// Rasters of water-surface elevations.
    pub surfaces: Vec<EventRaster<Dem>>,
    /// Rasters of depths.
    pub depths: Vec<EventRaster<DepthRaster>>,
    /// Cross-sections and flood-level lines.
    pub lines: Vec<LevelLineMap>,
}

/// A raster of one flood.
pub struct EventRaster<R> {
    /// Which flood.
    pub chance: AnnualChance,
    /// The raster.
    pub raster: R,
}
