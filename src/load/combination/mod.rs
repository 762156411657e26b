//! Load factors and load combinations.

mod actions;
mod read;
mod set;

pub use actions::{Actions, Combination};
pub use set::{CombinationSet, FactorBasis, Factors, LoadZone, ResistanceBasis};
