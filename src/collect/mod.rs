//! What services hold, brought onto the disk.
//!
//! [`write_layers`] puts the features of services that lie around some [`Places`] into a
//! `GeoPackage`, which says of each layer where it came from and when. It is then read as any
//! other file, so that an answer is the same whichever way its maps came.

mod digest;
mod error;
mod fields;
mod layers;
mod places;
mod shapes;
mod spots;

pub use error::CollectError;
pub use layers::{ArrivedLayer, WrittenLayer, write_layers};
pub use places::Places;
