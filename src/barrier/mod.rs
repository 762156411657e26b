//! The barrier itself: the kit it is built from and what an opening needs of it.

mod kit;
mod planks;

pub use kit::Kit;
pub use planks::{PlankStack, planks_for};
