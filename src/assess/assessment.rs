//! The answer for one building. What few buildings have is boxed: a million answers are
//! handed on with room for it.

use super::{MapRead, Method, Place, Trail, YearlyChance};
use crate::barrier::{BarrierAnswer, BehindBarriers, PlankStack};
use crate::load::Hydrostatic;
use crate::quantity::{Elevation, Length};
use crate::site::{Opening, Site};
use crate::verdict::{Caution, Reason, Verdict};

/// The answer for one building.
#[derive(Clone, Debug)]
pub struct Assessment<'a> {
    /// What was asked.
    pub site: &'a Site,
    /// Its threshold; `None` where it is an estimate from the ground and no ground is known.
    pub threshold: Option<Elevation>,
    /// What is known at the site's location.
    pub place: Place<'a>,
    /// One for each opening, in the order of the site.
    pub openings: Vec<OpeningAssessment<'a>>,
    /// The worst of the openings.
    pub verdict: Verdict,
    /// What all barriers together ask of a pump and of people; `None` without a barrier.
    pub behind: Option<Box<BehindBarriers>>,
    /// What to know beside the figures.
    pub cautions: Vec<Caution>,
    /// What the answer was read from.
    pub maps: Vec<MapRead>,
    /// How each figure came about.
    pub trail: Trail,
    /// How the answer was worked out.
    pub method: &'a Method,
}

/// The answer for one opening.
#[derive(Clone, Debug)]
pub struct OpeningAssessment<'a> {
    /// The opening as stated.
    pub opening: &'a Opening,
    /// What is known where it stands, if that is not where the site is.
    pub place: Option<Box<Place<'a>>>,
    /// Its sill; `None` where nobody has measured it.
    pub sill: Option<Elevation>,
    /// Flood level less sill, not less than nothing.
    pub depth: Option<Length>,
    /// Design level less sill, not less than nothing.
    pub protection_height: Option<Length>,
    /// Whole planks that reach the protection height.
    pub planks: Option<PlankStack>,
    /// Still water at the design level.
    pub at_design_level: Option<Hydrostatic>,
    /// Still water at the top of the barrier.
    pub at_top: Option<Hydrostatic>,
    /// Chance that the assessed event passes the top of the barrier, where the level's
    /// standard deviation is known.
    pub chance_over_top: Option<f64>,
    /// How often water reaches the sill, where levels of several floods are known.
    pub water_at_sill: Option<YearlyChance>,
    /// How often water reaches the top of the barrier, where levels of several floods are known.
    pub water_at_top: Option<YearlyChance>,
    /// The barrier with its checks; `None` where no plank is needed or no height is known.
    pub barrier: Option<Box<BarrierAnswer>>,
    /// The worst that the reasons ask for.
    pub verdict: Verdict,
    /// Why, the weightiest first.
    pub reasons: Vec<Reason>,
}
