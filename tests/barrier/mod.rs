//! Kits and planks.

mod fitting;
mod handling;
mod hostile;
mod planks;
