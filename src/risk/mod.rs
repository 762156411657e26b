//! How likely things are.

mod over_top;

pub use over_top::chance_of_passing;
