//! From the flood level to the design level: freeboard rules and the levels they start from.
//!
//! A [`Rule`] is data: the highest of one or more terms, each of which adds a height to a
//! level. The rules that ship with the project stand in `data/rules.toml`, with source and
//! edition; a site file can bring its own.

mod catalog;
mod event;
mod level;
mod occupancy;
mod rule;

pub use catalog::rules;
pub use event::{FloodEvent, StatedLevel};
pub use level::{BaseLevel, DesignGap, DesignLevel, KnownLevels, design_level};
pub use occupancy::Occupancy;
pub use rule::{Base, Rule, Term};
