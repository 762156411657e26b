//! Flood zones: which layer, which place, which meaning.

mod areas;
pub(crate) mod fixture;
mod layers;
mod level_lines;
mod mapping;
mod meaning;
mod parts;
mod paths;
mod places;
