//! What services hold, brought onto the disk: only the part that is asked for, as files that are
//! read like any other.

mod terrain;

pub use terrain::{CollectTerrainError, CollectedTerrain, terrain};
