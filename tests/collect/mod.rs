//! What services hold, brought onto the disk.

mod boxes;
mod layers;
