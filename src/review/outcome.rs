//! What becomes of one point.

use super::{Figure, Tolerance};

/// What becomes of one point, from the best to the worst.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// It agrees with ours, or keeps within a limit.
    Holds,
    /// It lies on the safe side of ours.
    Exceeds {
        /// By how much; `None` where that is no number.
        by: Option<Figure>,
    },
    /// Something is missing on either side.
    CannotBeChecked {
        /// What.
        missing: Vec<String>,
    },
    /// It lies on the unsafe side of ours, or over a limit.
    FallsShort {
        /// By how much; `None` where that is no number.
        by: Option<Figure>,
    },
}

/// The kind of an outcome, without its figures; the worst is the greatest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OutcomeKind {
    /// [`Outcome::Holds`].
    Holds,
    /// [`Outcome::Exceeds`].
    Exceeds,
    /// [`Outcome::CannotBeChecked`].
    CannotBeChecked,
    /// [`Outcome::FallsShort`].
    FallsShort,
}

impl Outcome {
    /// Its kind.
    #[must_use]
    pub const fn kind(&self) -> OutcomeKind {
        match self {
            Self::Holds => OutcomeKind::Holds,
            Self::Exceeds { .. } => OutcomeKind::Exceeds,
            Self::CannotBeChecked { .. } => OutcomeKind::CannotBeChecked,
            Self::FallsShort { .. } => OutcomeKind::FallsShort,
        }
    }
}

impl OutcomeKind {
    /// All of them, the worst first.
    pub const WORST_FIRST: [Self; 4] = [
        Self::FallsShort,
        Self::CannotBeChecked,
        Self::Exceeds,
        Self::Holds,
    ];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Holds => "holds",
            Self::Exceeds => "exceeds",
            Self::CannotBeChecked => "cannot be checked",
            Self::FallsShort => "falls short",
        }
    }
}

/// On which side of our figure a proposed one is safe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sense {
    /// Above it.
    MoreIsSafer,
    /// Below it.
    LessIsSafer,
    /// Ours is a limit that is not to be passed; how far below is of no interest.
    AtMost,
    /// Ours is a least value; how far above is of no interest.
    AtLeast,
}

/// Holds a proposed figure against ours. Figures without numbers are not compared here.
pub(super) fn compare(
    ours: &Figure,
    theirs: &Figure,
    tolerance: &Tolerance,
    sense: Sense,
) -> Outcome {
    let (Some((own, _)), Some((their, _))) = (ours.in_si(), theirs.in_si()) else {
        return Outcome::CannotBeChecked {
            missing: Vec::new(),
        };
    };
    if tolerance.takes(own, their) {
        return Outcome::Holds;
    }
    let by = ours.difference((their - own).abs());
    let more = their > own;
    match sense {
        Sense::MoreIsSafer if more => Outcome::Exceeds { by },
        Sense::LessIsSafer if !more => Outcome::Exceeds { by },
        Sense::AtMost if !more => Outcome::Holds,
        Sense::AtLeast if more => Outcome::Holds,
        _ => Outcome::FallsShort { by },
    }
}
