//! Why the surroundings of a site cannot be read.

use crate::crs::CrsError;
use crate::terrain::TerrainError;

/// A source that cannot be read around a site.
#[derive(Debug, thiserror::Error)]
pub enum SurroundingsError {
    /// A terrain file cannot be read.
    #[error(transparent)]
    Terrain(#[from] TerrainError),
    /// Coordinates that cannot be turned into those of another system.
    #[error(transparent)]
    Crs(#[from] CrsError),
}
