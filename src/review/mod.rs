//! An assessment held against somebody's proposal, point by point.
//!
//! [`review`] compares, and computes nothing that an [`Assessment`] has: every figure of ours
//! is the assessment's. It asks no map and no grid: the shifts between datums that are known
//! at the site are given to it. A point
//!
//! 1. shows our figure and the proposed one, on one datum and over one edge;
//! 2. has a [`Tolerance`] of two standard deviations of what both are uncertain by, of the last
//!    digit of the proposed figure and of what units leave open;
//! 3. comes to an [`Outcome`]: holds, falls short or exceeds by so much, or cannot be checked
//!    for want of something;
//! 4. lists each [`Finding`] that would explain the difference. A finding is a possibility.

mod building;
mod desk;
mod explain;
mod figure;
mod finding;
mod opening;
mod outcome;
mod overall;
mod point;
mod shifts;
mod tolerance;
mod topic;
mod uncertain;

pub use figure::Figure;
pub use finding::{DatumSlip, Finding, LoadSlip, UnitSlip, Whose};
use finding::{STILL_REFERENCE, WAVE_REFERENCE};
pub use outcome::{Outcome, OutcomeKind};
pub use overall::Counts;
pub use point::{Point, Proposed, Subject};
pub use shifts::{KnownShift, Shifts, UnknownShift};
pub use tolerance::{Contribution, Size, Tolerance, TolerancePart};
pub use topic::{Against, Topic};

use crate::assess::Assessment;
use crate::proposal::Proposal;
use desk::Desk;

/// A proposal held against an assessment.
#[derive(Clone, Debug)]
pub struct Review<'a> {
    /// Ours.
    pub assessment: &'a Assessment<'a>,
    /// Theirs.
    pub proposal: &'a Proposal,
    /// The shifts between datums that were at hand.
    pub shifts: &'a Shifts,
    /// The building's points, then those of each opening.
    pub points: Vec<Point>,
}

/// Holds a proposal against an assessment.
///
/// ```
/// use sillmark::assess::{Detail, Method, Sources, Uncertainty, assess};
/// use sillmark::barrier::{DesignRules, Kit};
/// use sillmark::crs::{DatumSettings, Datums};
/// use sillmark::design::rules;
/// use sillmark::level::LevelMaps;
/// use sillmark::load::LoadZone;
/// use sillmark::proposal::Proposal;
/// use sillmark::quantity::unit::{Length, meter};
/// use sillmark::quantity::{AnnualChance, UnitSystem};
/// use sillmark::review::{Finding, OutcomeKind, Shifts, Topic, review};
/// use sillmark::site::Site;
/// use sillmark::terrain::Terrain;
/// use sillmark::verdict::Limits;
///
/// let site = Site::from_toml("lock.toml", r#"
/// name = "Lock Cottage"
/// location = { longitude = -74.0335, latitude = 40.7400 }
/// threshold = "8.1 ft NAVD88"
/// [[flood_level]]
/// event = "1%"
/// level = "9.0 ft NAVD88"
/// standard_deviation = "0.05 ft"
/// source = "county study, profile 12"
/// [[opening]]
/// id = "front door"
/// width = "36 in"
/// "#)?;
/// let kit = Kit::demonstration()?;
/// let method = Method {
///     rule: rules()?.into_iter().find(|rule| rule.id == "us-nfip-floodproofing").unwrap(),
///     rules: DesignRules::of(&kit, &site.conditions.loads, LoadZone::Other)?,
///     kit,
///     limits: Limits::shipped()?,
///     event: AnnualChance::ONE_PERCENT,
///     grade_radius: Length::new::<meter>(10.0),
///     uncertainty: Uncertainty::of(&site.uncertainty, None)?,
///     years: 30,
///     units: UnitSystem::Us,
///     detail: Detail::Full,
/// };
/// let sources = Sources {
///     zones: Vec::new(),
///     levels: LevelMaps::default(),
///     terrain: Terrain::new(Vec::new()),
///     datums: Datums::new(DatumSettings::default())?,
/// };
/// let assessment = assess(&site, &sources, &method)?;
/// let offer = Proposal::from_toml("offer.toml", "design_level = \"9.0 ft NAVD88\"")?;
///
/// let shifts = Shifts::default();
/// let review = review(&assessment, &offer, &shifts);
/// let mut points = review.points.iter();
/// let design = points.find(|point| point.topic == Topic::DesignLevel).unwrap();
/// assert_eq!(design.outcome.kind(), OutcomeKind::FallsShort);
/// assert!(matches!(design.findings[0], Finding::FreeboardForgotten { .. }));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn review<'a>(
    assessment: &'a Assessment<'a>,
    proposal: &'a Proposal,
    shifts: &'a Shifts,
) -> Review<'a> {
    let desk = Desk {
        assessment,
        proposal,
        shifts,
    };
    let mut points = building::points(&desk);
    points.extend(opening::points(&desk));
    Review {
        assessment,
        proposal,
        shifts,
        points,
    }
}
