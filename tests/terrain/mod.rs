//! The ground, and the absence of it.

mod fixture;
mod grade;
mod ground;
mod no_data;
mod outline;
mod stated;
