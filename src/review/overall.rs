//! What a review comes to.

use super::{OutcomeKind, Review};

/// How many points came to what.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Points that hold.
    pub holds: usize,
    /// Points on the safe side of ours.
    pub exceeds: usize,
    /// Points that something is missing for.
    pub cannot_be_checked: usize,
    /// Points on the unsafe side of ours, or over a limit.
    pub falls_short: usize,
}

impl Counts {
    /// The number of one kind.
    #[must_use]
    pub const fn of(&self, kind: OutcomeKind) -> usize {
        match kind {
            OutcomeKind::Holds => self.holds,
            OutcomeKind::Exceeds => self.exceeds,
            OutcomeKind::CannotBeChecked => self.cannot_be_checked,
            OutcomeKind::FallsShort => self.falls_short,
        }
    }
}

impl Review<'_> {
    /// What has to be known of every review.
    pub const SCREENING: &'static str = "A review is a screening: it compares figures and judges no one's work. A finding says what would make two figures equal, not what somebody did. A licensed engineer and the authority decide";

    /// How many points came to what.
    #[must_use]
    pub fn counts(&self) -> Counts {
        let count = |kind| {
            let points = self.points.iter();
            points.filter(|point| point.outcome.kind() == kind).count()
        };
        Counts {
            holds: count(OutcomeKind::Holds),
            exceeds: count(OutcomeKind::Exceeds),
            cannot_be_checked: count(OutcomeKind::CannotBeChecked),
            falls_short: count(OutcomeKind::FallsShort),
        }
    }

    /// The worst that a point came to; nothing checked is no praise.
    #[must_use]
    pub fn worst(&self) -> OutcomeKind {
        let kinds = self.points.iter().map(|point| point.outcome.kind());
        kinds.max().unwrap_or(OutcomeKind::CannotBeChecked)
    }
}
