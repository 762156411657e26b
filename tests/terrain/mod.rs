//! The ground, and the absence of it.

mod agreement;
mod by_cell;
pub(crate) mod fixture;
mod grade;
mod ground;
mod layout;
mod no_data;
mod outline;
mod stated;
mod tiles;
