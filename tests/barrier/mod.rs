//! Kits and planks.

mod hostile;
mod planks;
