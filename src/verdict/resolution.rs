//! What would answer an unresolved question.

use super::{Missing, Reason};

impl Reason {
    /// What would resolve an unresolved reason: a survey, a study, a map, a statement. `None`
    /// for a reason that is no question.
    ///
    /// ```
    /// use sillmark::verdict::{Missing, Reason};
    /// let unmeasured = Reason::Missing(Missing::Sill);
    /// assert!(unmeasured.resolved_by().unwrap().starts_with("a licensed surveyor"));
    /// ```
    #[must_use]
    pub fn resolved_by(&self) -> Option<&'static str> {
        match self {
            Self::Missing(missing) => Some(missing.resolved_by()),
            _ => None,
        }
    }
}

impl Missing {
    const fn resolved_by(&self) -> &'static str {
        match self {
            Self::Sill => {
                "a licensed surveyor measures the sill, on a stated vertical datum; state it as the opening's sill"
            }
            Self::GroundUnderSill => {
                "a surveyed threshold with its datum, or a terrain model that has ground there"
            }
            Self::FarFromGround { .. } => {
                "unit, datum and place of the sill are checked against a survey, and the datum and unit of the terrain against its publisher's word"
            }
            Self::Zones { .. } => {
                "the flood-zone layer of the authority (--zones), or a level from its flood study ([[flood_level]])"
            }
            Self::ZoneHere => {
                "a flood-zone layer that covers the place, or the authority's word on which zone it lies in"
            }
            Self::KnownZone { .. } => {
                "a flood study of the place: ask the authority for the level and state it as [[flood_level]]"
            }
            Self::LeveeLevel { .. } => {
                "the authority's level for the day the levee fails, stated as [[flood_level]]"
            }
            Self::LevelInZone { .. } | Self::LevelOfEvent { .. } => {
                "the level of the flood study's profile, stated as [[flood_level]] with its source; cross-sections, flood-level lines or a water-surface raster; or, where a level was refused for its datum, the grid or the study's offset between the two datums"
            }
            Self::RiverAbove { .. } => {
                "a survey of the ground between river and building; then the level that holds, stated as [[flood_level]]"
            }
            Self::HighestGrade { .. } => {
                "the highest ground against the walls, surveyed (highest_adjacent_grade), or a terrain model"
            }
            Self::RuleLevel { .. } => {
                "the level that the rule asks for, from the flood study or the authority, stated as [[flood_level]]"
            }
            Self::Occupancy => "the use of the building, stated as occupancy",
        }
    }
}
