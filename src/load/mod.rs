//! What the water does to a barrier and a wall.
//!
//! Loads are for each unit of width. Depths are measured from the foot of the loaded
//! surface up to the water surface; heights in a [`PressureProfile`] up from the sill.

mod band;
mod buoyancy;
mod depth;
mod hydrostatic;
mod profile;
mod velocity;
mod water;

pub use band::PressureBand;
pub use buoyancy::buoyant_force;
pub use depth::depth_at_wall;
pub use hydrostatic::{Hydrostatic, hydrostatic_pressure};
pub use profile::{PressureProfile, Resultant};
pub use velocity::{VelocityBounds, velocity_bounds};
pub use water::{Salinity, WATER_WEIGHT_SOURCE, standard_gravity};
