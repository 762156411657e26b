//! How a member is held.

use crate::quantity::unit::Length;

/// What holds a member. Supports do not give way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Supports {
    /// Pinned at both ends: a plank between two posts.
    SimplySupported,
    /// Fixed at the start, free at the far end: a post on its base plate.
    Cantilever,
    /// Fixed at the start and pinned at `at`, free beyond: a braced post on its base plate.
    Propped {
        /// Where the prop holds, from the start; above 0 and not beyond the far end.
        at: Length,
    },
    /// Pinned at the start and at `at`, free beyond: a braced post that its base does not
    /// hold upright.
    PinnedAndPropped {
        /// Where the prop holds, from the start; above 0 and not beyond the far end.
        at: Length,
    },
}

impl Supports {
    /// Where the second support stands, for a member of this length.
    pub(super) fn second(self, length: Length) -> Option<Length> {
        match self {
            Self::SimplySupported => Some(length),
            Self::Cantilever => None,
            Self::Propped { at } | Self::PinnedAndPropped { at } => Some(at),
        }
    }
}
