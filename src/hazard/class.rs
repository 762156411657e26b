//! How bad a zone is, whatever its publisher calls it.

use crate::statement::Choice;

/// What a zone means for a building in it, from the mildest to the worst: where zones
/// overlap, the greater one decides.
///
/// The classes follow the zones of 44 CFR 64.3 and the FIRM Database Technical Reference
/// (Domain Tables), and fit other publishers' zones by their meaning: "the flood" is the one
/// that a map is about, the 1 % annual chance flood in the United States. Which one it is
/// stands in [`Zone::annual_chance`](super::Zone::annual_chance).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ZoneClass {
    /// Outside every mapped flood, and the map says so. Not a promise of dry ground.
    Minimal,
    /// Outside the flood; whether inside a rarer one the map does not say.
    Unspecified,
    /// Outside the flood, inside a rarer one: that of 0.2 % in the United States, of 0.1 % in
    /// England.
    Rare,
    /// Water of the flood that the map leaves out of its main zone for its small depth,
    /// small basin or later date.
    Limited,
    /// Protected by a levee: as deep as if there were none, should it fail.
    BehindLevee,
    /// Not studied, not included, or a code that is not known here. Never dry.
    Unknown,
    /// Inside the flood, by approximate methods or as a bare extent; mostly without a level.
    Approximate,
    /// Inside the flood, as a depth above the ground.
    SheetFlow,
    /// Inside the flood, studied in detail, with a level here or in another layer.
    Detailed,
    /// Kept free for the flow of the flood: deep and fast.
    Floodway,
    /// Inside the flood, with breaking waves at the coast.
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

impl Choice for ZoneClass {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("minimal", Self::Minimal),
        ("unspecified", Self::Unspecified),
        ("rare", Self::Rare),
        ("limited", Self::Limited),
        ("behind-levee", Self::BehindLevee),
        ("unknown", Self::Unknown),
        ("approximate", Self::Approximate),
        ("sheet-flow", Self::SheetFlow),
        ("detailed", Self::Detailed),
        ("floodway", Self::Floodway),
        ("coastal-wave", Self::CoastalWave),
    ];
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
