//! Kits and planks.

mod design;
mod fitting;
mod handling;
mod hostile;
mod mount;
mod planks;
mod wall_anchors;
