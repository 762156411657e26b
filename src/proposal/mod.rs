//! What somebody proposes for a building: levels, openings with their barriers, loads, people.
//!
//! A [`Proposal`] comes from a TOML file of its own ([`Proposal::from_toml`]). Every field may
//! be left out, and nothing is filled in: what it does not state cannot be checked. Figures
//! keep the text that they were written in, because a figure says no more than its last digit.

mod file;
mod leakage;
mod load;
mod opening;

pub use leakage::ProposedLeakage;
pub use load::ProposedLoad;
pub use opening::{MeasuredFrom, ProposedOpening};

use crate::design::Occupancy;
use crate::quantity::unit::Time;
use crate::quantity::{AnnualChance, Elevation, Length};
use crate::statement::Written;

/// A proposal for one building.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Proposal {
    /// Name for people.
    pub name: Option<String>,
    /// The file it was read from, as the user named it.
    pub file: String,
    /// The flood level that it starts from.
    pub flood_level: Option<Written<Elevation>>,
    /// Annual chance of that flood.
    pub annual_chance: Option<AnnualChance>,
    /// What it adds to the flood level.
    pub freeboard: Option<Written<Length>>,
    /// The level up to which it keeps openings dry.
    pub design_level: Option<Written<Elevation>>,
    /// Where it has its flood level from.
    pub source: Option<String>,
    /// The use of the building.
    pub occupancy: Option<Occupancy>,
    /// Whether it is offered as what makes the building comply with flood-plain rules.
    pub compliance: Option<bool>,
    /// What leaks through the seals.
    pub leakage: Option<ProposedLeakage>,
    /// Time between the warning and the water that it counts on.
    pub warning: Option<Written<Time>>,
    /// How long all of it takes to fit.
    pub fitting_time: Option<Written<Time>>,
    /// The openings that it closes.
    pub openings: Vec<ProposedOpening>,
}
