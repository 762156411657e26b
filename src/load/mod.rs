//! What the water does to a barrier and a wall.
//!
//! Loads are for each unit of width. Depths are measured from the foot of the loaded
//! surface up to the water surface.

mod buoyancy;
mod depth;
mod hydrostatic;
mod velocity;
mod water;

pub use buoyancy::buoyant_force;
pub use depth::depth_at_wall;
pub use hydrostatic::{Hydrostatic, hydrostatic_pressure};
pub use velocity::{VelocityBounds, velocity_bounds};
pub use water::{Salinity, WATER_WEIGHT_SOURCE, standard_gravity};
