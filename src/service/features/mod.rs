//! Features of a layer that a service serves.

mod degree_box;
mod layer_address;
mod served;

pub use degree_box::DegreeBox;
pub use layer_address::LayerAddress;
pub use served::{ServedFeature, ServedLayer};
