//! One case of water before a barrier, and the load that it is.

mod assemble;
mod outside;
mod water_case;
mod water_load;

pub use outside::Outside;
pub use water_case::{BreakingWaves, WaterCase, WaveAction, WaveLevel};
pub use water_load::{LoadPart, LoadReference, NotIncluded, WaterLoad};
