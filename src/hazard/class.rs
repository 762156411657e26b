//! How bad a zone is, whatever its publisher calls it.

use serde::Deserialize;

/// What a zone means for a building in it, from the mildest to the worst: where zones
/// overlap, the greater one decides.
///
/// The classes follow the zones of 44 CFR 64.3 and the FIRM Database Technical Reference
/// (Domain Tables), and fit other publishers' zones by their meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ZoneClass {
    /// Outside every mapped flood, and the map says so. Not a promise of dry ground.
    Minimal,
    /// Outside the 1 % flood; whether inside the 0.2 % flood the map does not say.
    Unspecified,
    /// Inside the 0.2 % annual chance flood only.
    Rare,
    /// 1 % annual chance water that the map leaves out of its main zone for its small depth,
    /// small basin or later date.
    Limited,
    /// Protected by a levee: as deep as if there were none, should it fail.
    BehindLevee,
    /// Not studied, not included, or a code that is not known here. Never dry.
    Unknown,
    /// 1 % annual chance, by approximate methods and mostly without a level.
    Approximate,
    /// 1 % annual chance sheet flow, as a depth above the ground.
    SheetFlow,
    /// 1 % annual chance, studied in detail, with a level here or in another layer.
    Detailed,
    /// Kept free for the flow of the flood: deep and fast.
    Floodway,
    /// 1 % annual chance with breaking waves at the coast.
    CoastalWave,
}

impl ZoneClass {
    /// Whether the zone is flooded by the event that the map is about (for the United
    /// States the special flood hazard area).
    #[must_use]
    pub fn is_inside(self) -> bool {
        self >= Self::Approximate
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_unknown_is_worse_than_everything_outside() {
        for milder in [
            ZoneClass::Minimal,
            ZoneClass::Unspecified,
            ZoneClass::Rare,
            ZoneClass::Limited,
            ZoneClass::BehindLevee,
        ] {
            assert!(milder < ZoneClass::Unknown && !milder.is_inside());
        }
        assert!(!ZoneClass::Unknown.is_inside());
        assert!(ZoneClass::CoastalWave > ZoneClass::Floodway);
    }
}
