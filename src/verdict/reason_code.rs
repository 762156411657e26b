//! Short names of reasons, for tables and counts.

use super::{Missing, Reason};

impl Reason {
    /// A short name that stays the same.
    ///
    /// ```
    /// use sillmark::verdict::{Missing, Reason};
    /// assert_eq!(Reason::Missing(Missing::ZoneHere).code(), "no-zone-here");
    /// ```
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::SillAtOrAbove { .. } => "sill-at-or-above",
            Self::OutsideMappedFlood { .. } => "outside-mapped-flood",
            Self::SillBelow { .. } => "sill-below",
            Self::OverWallLimit { .. } => "over-wall-limit",
            Self::NoWallLimit { .. } => "no-wall-limit",
            Self::CoastalWaves { .. } => "coastal-waves",
            Self::StatedWaves => "stated-waves",
            Self::Floodway => "floodway",
            Self::FastWater { .. } => "fast-water",
            Self::BelowGround { .. } => "sill-below-ground",
            Self::Barrier(_) => "barrier-falls-short",
            Self::NotInTime { .. } => "not-in-time",
            Self::Missing(missing) => missing.code(),
        }
    }
}

impl Missing {
    const fn code(&self) -> &'static str {
        match self {
            Self::Sill => "no-sill",
            Self::GroundUnderSill => "no-ground-under-sill",
            Self::Zones { .. } => "no-zones-given",
            Self::ZoneHere => "no-zone-here",
            Self::KnownZone { .. } => "zone-not-studied",
            Self::LeveeLevel { .. } => "behind-levee",
            Self::LevelInZone { .. } => "no-level-in-zone",
            Self::RiverAbove { .. } => "river-above-sill",
            Self::LevelOfEvent { .. } => "no-level-of-event",
            Self::HighestGrade { .. } => "no-highest-grade",
            Self::RuleLevel { .. } => "no-level-of-rule",
            Self::Occupancy => "no-occupancy",
        }
    }
}
