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
