//! What the user states: a building at a point, its threshold and its openings.
//!
//! A [`Site`] comes from a TOML file ([`Site::from_toml`]) or from options on the command
//! line ([`QuickForm`]). Nothing here reads a file or guesses: what is not stated is `None`.

mod anchor_setting;
mod conditions;
mod datum_offset;
mod file;
mod fitting_statement;
mod footprint;
mod inside;
mod load_statement;
mod location;
mod mounting;
mod opening;
mod question;
mod quick;
mod threshold;
mod uncertainty;
mod wall;
mod water;

pub use anchor_setting::AnchorSetting;
pub use conditions::Conditions;
pub use datum_offset::StatedOffset;
pub(crate) use file::{clear_height, width as opening_width};
pub use fitting_statement::FittingStatement;
pub use footprint::{Footprint, FootprintError};
pub use inside::{InsideStatement, SillGap};
pub use load_statement::{CombinationChoice, LoadStatement};
pub use location::{Location, LocationError};
pub use mounting::{BraceSide, Mount};
pub use opening::{Opening, OpeningKind, Sill};
pub use question::{BarrierForm, BarrierQuestion};
pub use quick::{QuickForm, place_of_option};
pub use threshold::Threshold;
pub use uncertainty::{GivenDeviation, GivenValue, StatedUncertainty};
pub use wall::WallKind;
pub use water::{WaterConditions, Waves};

use crate::design::{Occupancy, Rule, StatedLevel};
use crate::quantity::{Elevation, UnitSystem};
use crate::statement::Place;

/// One building.
#[derive(Clone, Debug, PartialEq)]
pub struct Site {
    /// Name for people.
    pub name: String,
    /// Where it stands.
    pub location: Location,
    /// Its threshold.
    pub threshold: Threshold,
    /// The units that the threshold is written in: people read answers in their own units.
    pub units: UnitSystem,
    /// Where the threshold was stated, for messages.
    pub threshold_place: Place,
    /// What it is used for.
    pub occupancy: Option<Occupancy>,
    /// The outline of the building, where the user states it.
    pub footprint: Option<Footprint>,
    /// Surveyed ground against the walls.
    pub grade: SurveyedGrade,
    /// What barriers have to meet here: water, loads, anchors, rooms, people.
    pub conditions: Conditions,
    /// Flood levels that somebody states.
    pub flood_levels: Vec<StatedLevel>,
    /// Standard deviations that the user states in place of ours.
    pub uncertainty: StatedUncertainty,
    /// Offsets between vertical datums that somebody states.
    pub datum_offsets: Vec<StatedOffset>,
    /// The freeboard rule that the site file names or writes.
    pub rule: Option<RuleChoice>,
    /// At least one.
    pub openings: Vec<Opening>,
}

/// Ground against the walls as surveyed; not read from a terrain model.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SurveyedGrade {
    /// Lowest adjacent grade.
    pub lowest: Option<Elevation>,
    /// Highest adjacent grade.
    pub highest: Option<Elevation>,
}

/// A freeboard rule chosen in a site file.
#[derive(Clone, Debug, PartialEq)]
pub enum RuleChoice {
    /// By its id in the catalogue: `rule = "us-nfip-floodproofing"`.
    Named {
        /// The id as written.
        id: String,
        /// Where it is written, for messages.
        place: Place,
    },
    /// Written out in the site file as `[rule]`.
    Written(Box<Rule>),
}
