//! What services hold, brought onto the disk.

mod layers;
mod places;
mod terrain;
