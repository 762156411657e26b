//! Flood zones: which layer, which place, which meaning.

mod fixture;
mod layers;
mod mapping;
mod meaning;
mod places;
