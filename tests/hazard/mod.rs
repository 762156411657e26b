//! Flood zones: which layer, which place, which meaning.

mod fixture;
mod layers;
mod meaning;
mod paths;
mod places;
