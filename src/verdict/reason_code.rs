//! Short names of reasons, for tables and counts, each with what it means.

use super::{Missing, Reason, Verdict};

/// What a reason is, without the figures of a case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReasonCode {
    /// A short name that stays the same.
    pub code: &'static str,
    /// The verdict that it asks for.
    pub verdict: Verdict,
    /// What it means, a sentence without its full stop.
    pub meaning: &'static str,
}

/// Makes the list of codes and the code of a reason from the same lines, so that no reason is
/// without its line.
macro_rules! reason_codes {
    ($($case:pat => $verdict:ident, $code:literal, $meaning:literal;)+) => {
        impl ReasonCode {
            /// Every code, those of one verdict together.
            pub const ALL: &'static [Self] = &[$(
                Self { code: $code, verdict: Verdict::$verdict, meaning: $meaning }
            ),+];
        }

        impl Reason {
            /// Which reason it is, whatever its figures.
            ///
            /// ```
            /// use sillmark::verdict::{Missing, Reason, Verdict};
            /// let kind = Reason::Missing(Missing::ZoneHere).kind();
            /// assert_eq!(kind.code, "no-zone-here");
            /// assert_eq!(kind.verdict, Verdict::Unresolved);
            /// ```
            #[must_use]
            pub const fn kind(&self) -> &'static ReasonCode {
                match self {
                    $($case => &ReasonCode {
                        code: $code, verdict: Verdict::$verdict, meaning: $meaning
                    }),+
                }
            }
        }
    };
}

reason_codes! {
    Self::SillAtOrAbove { .. } => Above, "sill-at-or-above",
        "The sill lies at or above the design level";
    Self::OutsideMappedFlood { .. } => Above, "outside-mapped-flood",
        "The map puts the place outside the assessed flood and gives no level to compare with";
    Self::SillBelow { .. } => Protect, "sill-below",
        "The sill lies below the design level";
    Self::OverWallLimit { .. } => Engineer, "over-wall-limit",
        "The design level stands higher against the wall than such a wall takes without a licensed design (sillmark catalog limits)";
    Self::NoWallLimit { .. } => Engineer, "no-wall-limit",
        "No depth of water is known that such a wall takes without a licensed design";
    Self::CoastalWaves { .. } => Engineer, "coastal-waves",
        "The map has a coastal high-hazard area there: breaking waves";
    Self::StatedWaves => Engineer, "stated-waves",
        "Waves are stated, and wave loads need a licensed design";
    Self::Floodway => Engineer, "floodway",
        "The place lies in the regulatory floodway: fast water and debris";
    Self::FastWater { .. } => Engineer, "fast-water",
        "The stated water is faster than a barrier without a licensed design stands (sillmark catalog limits)";
    Self::BelowGround { .. } => Engineer, "sill-below-ground",
        "The sill lies below the lowest ground near it: soil and groundwater press as well";
    Self::Barrier(_) => Engineer, "barrier-falls-short",
        "The kit is no answer by itself: a part does not hold, is missing or does not fit the opening; the sentence says which";
    Self::NotInTime { .. } => Engineer, "not-in-time",
        "Putting up the barriers takes longer than the stated warning";
    Self::Missing(Missing::Sill) => Unresolved, "no-sill",
        "The sill has not been measured";
    Self::Missing(Missing::GroundUnderSill) => Unresolved, "no-ground-under-sill",
        "The sill is estimated as a height above the ground, and no ground is known there";
    Self::Missing(Missing::FarFromGround { .. }) => Unresolved, "sill-far-from-ground",
        "The sill lies more than 30 m (98 ft) above or below the ground of the terrain: a wrong unit, datum or place";
    Self::Missing(Missing::Zones { .. }) => Unresolved, "no-zones-given",
        "No flood zones were given, and no other source has a level";
    Self::Missing(Missing::ZoneHere) => Unresolved, "no-zone-here",
        "No polygon of the flood zones holds the place; that is not the same as dry";
    Self::Missing(Missing::KnownZone { .. }) => Unresolved, "zone-not-studied",
        "The zone's code says that the flood hazard is not known there, or nobody knows the code; that is not the same as dry";
    Self::Missing(Missing::LeveeLevel { .. }) => Unresolved, "behind-levee",
        "The zone relies on a levee and states no level for the day it fails";
    Self::Missing(Missing::LevelInZone { .. }) => Unresolved, "no-level-in-zone",
        "The zone is flooded, and no source says how high";
    Self::Missing(Missing::RiverAbove { .. }) => Unresolved, "river-above-sill",
        "The map puts the place outside the flood, and the cross-sections or lines beside it stand above the sill: one of the two is wrong";
    Self::Missing(Missing::LevelOfEvent { .. }) => Unresolved, "no-level-of-event",
        "The assessed flood is rarer than those that the map rules out there, and no source has its level";
    Self::Missing(Missing::HighestGrade { .. }) => Unresolved, "no-highest-grade",
        "The level in the zone is counted from the highest ground against the wall, which is not known";
    Self::Missing(Missing::RuleLevel { .. }) => Unresolved, "no-level-of-rule",
        "The rule also needs a level that nobody stated";
    Self::Missing(Missing::Occupancy) => Unresolved, "no-occupancy",
        "The rule depends on the use of the building, which is not stated";
}

impl Reason {
    /// A short name that stays the same.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        self.kind().code
    }

    /// The verdict that this reason asks for.
    #[must_use]
    pub const fn verdict(&self) -> Verdict {
        self.kind().verdict
    }
}
