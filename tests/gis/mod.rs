//! Opening and reading whole.

mod complete;
mod geometry;
mod open;
