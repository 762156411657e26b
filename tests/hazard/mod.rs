//! Flood zones: which layer, which place, which meaning.

pub(crate) mod fixture;
mod layers;
mod level_lines;
mod mapping;
mod meaning;
mod paths;
mod places;
