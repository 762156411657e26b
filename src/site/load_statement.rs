//! What is stated of the loads that a barrier is designed for.

use crate::load::{CombinationSet, Debris, RiskCategory};
use crate::quantity::Length;
use crate::quantity::unit::Ratio;
use crate::statement::Place;

/// `[loads]` of a site file, as far as somebody states it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadStatement {
    /// Risk category of the building, which the load of breaking waves depends on.
    pub risk_category: Option<RiskCategory>,
    /// What the water carries.
    pub debris: Option<Debris>,
    /// A depth that is added for the load only, such as the foot that ASCE 7 adds on surfaces
    /// exposed to free water.
    pub extra_depth: Option<Length>,
    /// The greatest deflection of a plank or post, as a part of its span.
    pub deflection: Option<Ratio>,
    /// The set of load factors.
    pub combination: Option<CombinationChoice>,
}

/// A set of load factors chosen in a site file.
#[derive(Clone, Debug, PartialEq)]
pub enum CombinationChoice {
    /// By its id in the catalogue: `combination = "us-full-water"`.
    Named {
        /// The id as written.
        id: String,
        /// Where it is written, for messages.
        place: Place,
    },
    /// Written out in the site file as `[loads.combination]`.
    Written(Box<CombinationSet>),
}
