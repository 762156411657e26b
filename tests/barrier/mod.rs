//! Kits and planks.

mod fitting;
mod handling;
mod hostile;
mod impossible_kits;
mod materials;
mod planks;
mod profiles;
mod strength;
