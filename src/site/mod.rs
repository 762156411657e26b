//! What the user states.

mod location;

pub use location::{Location, LocationError};
