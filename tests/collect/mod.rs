//! What services hold, brought onto the disk.

mod terrain;
