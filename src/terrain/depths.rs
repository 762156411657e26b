//! One raster of water depths.

use std::ops::Deref;
use std::path::Path;

use super::{DemStatement, Raster, RasterRole, TerrainError};

/// A raster of depths of water over the ground: it has a unit, but no datum.
///
/// Not `Send`: a thread opens its own.
pub struct DepthRaster {
    raster: Raster,
}

/// A depth raster is read as any other.
impl Deref for DepthRaster {
    type Target = Raster;

    fn deref(&self) -> &Raster {
        &self.raster
    }
}

impl DepthRaster {
    /// Opens a depth raster of one band. Of the statement the unit (`--depth-unit`) and the
    /// coordinate reference system (`--depth-crs`) are used; a depth stands on no datum, so
    /// that whatever vertical system the file is in gives at most the unit.
    ///
    /// # Errors
    /// [`TerrainError`] with the path and, where something is missing, the option that
    /// states it.
    pub fn open(path: &Path, statement: &DemStatement) -> Result<Self, TerrainError> {
        let (raster, _) = Raster::open(path, statement, RasterRole::Depth)?;
        Ok(Self { raster })
    }
}
