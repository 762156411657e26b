//! What services hold, brought onto the disk.
//!
//! [`write_layers`] puts the features of services that lie around some [`Places`] into a
//! `GeoPackage`, [`terrain()`] a part of a served `GeoTIFF` into one of its own.
//! Both say where they came from and when, and are then read as any other file, so that an answer
//! is the same whichever way its maps came.

mod digest;
mod error;
mod fields;
mod layers;
mod placed;
mod places;
mod shapes;
mod spots;
mod terrain;

pub use error::CollectError;
pub use layers::{ArrivedLayer, WrittenLayer, write_layers};
pub use places::Places;
pub use terrain::{About, CollectTerrainError, CollectedTerrain, terrain};
