//! Kits and planks.

mod hostile;
mod impossible_kits;
mod materials;
mod planks;
mod profiles;
mod strength;
