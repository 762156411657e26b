//! The ground, and the absence of it.

pub(crate) mod fixture;
mod grade;
mod ground;
mod no_data;
mod outline;
mod stated;
