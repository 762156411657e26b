//! What was odd about the lines around a place, as data.

use super::beyond::units_of;
use super::view::Sight;
use crate::hazard::LevelLine;

/// Something about a bracketed level that its reader has to know.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BracketRemark {
    /// Lines of different levels cross at the place.
    #[error("{one} and {other} cross here: the higher level is taken")]
    Crossing {
        /// One line.
        one: String,
        /// Another.
        other: String,
    },
    /// A line that can be none of the same water.
    #[error(
        "{other} is not used: its level does not fit {nearest} and the line behind that one, so it is taken to lie across land"
    )]
    AcrossLand {
        /// The nearest line.
        nearest: String,
        /// The line on the other side.
        other: String,
    },
    /// The two lines are of two watercourses.
    #[error("between two watercourses: {nearest} and {other}")]
    BetweenWatercourses {
        /// The nearest line.
        nearest: String,
        /// The line on the other side.
        other: String,
    },
    /// A line of another watercourse was nearer on the other side, and not used.
    #[error(
        "{other} is not used: it would take the level out of the range of the watercourse of {nearest}"
    )]
    OtherWatercourse {
        /// The nearest line.
        nearest: String,
        /// The line on the other side.
        other: String,
    },
    /// The nearest line is of a watercourse without lines on both sides.
    #[error(
        "{set_aside} ({level}) is nearer but not used: the watercourse of {nearest} has lines on both sides"
    )]
    SetAside {
        /// The line that the level comes from.
        nearest: String,
        /// The nearer line.
        set_aside: String,
        /// Its level.
        level: String,
    },
    /// Levels do not fall along the water.
    #[error("levels do not fall along the water at {nearest}")]
    NotMonotone {
        /// The nearest line.
        nearest: String,
    },
    /// A line without a level lies between.
    #[error("{line} lies between and has no level")]
    WithoutLevel {
        /// The line.
        line: String,
    },
}

impl BracketRemark {
    pub(super) fn crossing(one: &Sight<'_>, other: &Sight<'_>) -> Self {
        let (one, other) = titles(one, other);
        Self::Crossing { one, other }
    }

    pub(super) fn across_land(nearest: &Sight<'_>, other: &Sight<'_>) -> Self {
        let (nearest, other) = titles(nearest, other);
        Self::AcrossLand { nearest, other }
    }

    pub(super) fn between_watercourses(nearest: &Sight<'_>, other: &Sight<'_>) -> Self {
        let (nearest, other) = titles(nearest, other);
        Self::BetweenWatercourses { nearest, other }
    }

    pub(super) fn other_watercourse(nearest: &Sight<'_>, other: &Sight<'_>) -> Self {
        let (nearest, other) = titles(nearest, other);
        Self::OtherWatercourse { nearest, other }
    }

    pub(super) fn set_aside(nearest: &Sight<'_>, set_aside: &Sight<'_>) -> Self {
        let level = units_of(set_aside).elevation(set_aside.level);
        let (nearest, set_aside) = titles(nearest, set_aside);
        Self::SetAside {
            nearest,
            set_aside,
            level,
        }
    }

    pub(super) fn not_monotone(nearest: &Sight<'_>) -> Self {
        Self::NotMonotone {
            nearest: nearest.line.title(),
        }
    }

    pub(super) fn without_level(line: &LevelLine) -> Self {
        Self::WithoutLevel { line: line.title() }
    }
}

fn titles(one: &Sight<'_>, other: &Sight<'_>) -> (String, String) {
    (one.line.title(), other.line.title())
}
