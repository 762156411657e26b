//! Flood zones: which layer, which place, which meaning.

pub(crate) mod fixture;
mod layers;
mod meaning;
mod paths;
mod places;
