//! Kits, planks and whole barriers.

mod design;
mod fitting;
mod handling;
mod hostile;
mod impossible_kits;
mod materials;
mod mount;
mod planks;
mod profiles;
mod strength;
mod wall_anchors;
