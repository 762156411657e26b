//! What an answer amounts to: verdicts with their reasons, limits, and cautions.
//!
//! Nothing is ever called safe. An opening gets the worst verdict that any of its reasons
//! asks for, a building the worst of its openings.

mod caution;
mod judge;
mod limits;
mod reason;
mod reason_code;
mod resolution;

pub use caution::{Caution, CautionTexts, WallWater};
pub use judge::{Evidence, MapStatement, judge, judge_stated};
pub use limits::{Limits, WallLimit};
pub use reason::{GroundSource, Missing, Reason};
pub use reason_code::ReasonCode;

use crate::statement::Choice;

/// What has to happen at an opening, from the least to the most.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// The sill lies at or above the design level, or the map has no flood there.
    Above,
    /// A barrier within common limits.
    Protect,
    /// A licensed engineer has to design it: over a limit, waves, fast water, weak wall.
    Engineer,
    /// A needed input is missing or refused.
    Unresolved,
}

impl Choice for Verdict {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("above", Self::Above),
        ("protect", Self::Protect),
        ("engineer", Self::Engineer),
        ("unresolved", Self::Unresolved),
    ];
}
