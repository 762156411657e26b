//! Which horizontal system PROJ is to hang a vertical datum on.
//!
//! PROJ finds geoid grids between compound systems only, and only those that are defined on
//! the horizontal system at hand or one transformation away from it. Hung on the wrong one, a
//! datum gets hundreds of roundabout operations or none (NAVD88 on WGS 84 to EGM2008: 188, on
//! NAD83(2011): 4, by PROJ 9.6).

use crate::quantity::VerticalDatum;

/// The geographic system (two axes, degrees) on which a datum's grids are defined: the source
/// or interpolation system of its transformations in the EPSG Dataset.
///
/// DHHN2016 hangs on ETRS89 although its newest geoid is defined on ETRS89/DREF91/2016
/// (EPSG 10284): no transformation leads from there to any other datum's system.
pub(super) const fn horizontal_systems(datum: VerticalDatum) -> &'static [u32] {
    match datum {
        VerticalDatum::Navd88 | VerticalDatum::Prvd02 | VerticalDatum::Vivd09 => &[NAD83_2011],
        VerticalDatum::Ngvd29 => &[NAD83],
        VerticalDatum::Nmvd03 | VerticalDatum::Guvd04 => &[NAD83_MA11],
        VerticalDatum::Asvd02 => &[NAD83_PA11],
        VerticalDatum::Odn | VerticalDatum::Nap | VerticalDatum::Dhhn2016 => &[ETRS89],
        VerticalDatum::NgfIgn69 => &[RGF93_V2B],
        VerticalDatum::Egm96 | VerticalDatum::Egm2008 => &[WGS84],
        VerticalDatum::Epsg(_) => HUBS,
        VerticalDatum::MeanSeaLevel
        | VerticalDatum::MeanLowerLowWater
        | VerticalDatum::MeanLowWater
        | VerticalDatum::LocalTidal => &[],
    }
}

const WGS84: u32 = 4326;
const ETRS89: u32 = 4258;
const NAD83: u32 = 4269;
const NAD83_2011: u32 = 6318;
const NAD83_PA11: u32 = 6322;
const NAD83_MA11: u32 = 6325;
const RGF93_V2B: u32 = 9782;

/// Where nothing is known of a datum but its code, these are tried in turn: the systems of
/// continents and countries on which the EPSG Dataset defines most of its geoids.
const HUBS: &[u32] = &[
    ETRS89, NAD83_2011, NAD83, 4617, // NAD83(CSRS), Canada
    7844, // GDA2020, Australia
    4283, // GDA94, Australia
    4167, // NZGD2000, New Zealand
    6668, // JGD2011, Japan
    4674, // SIRGAS 2000, Latin America
    WGS84,
];

/// Pairs of horizontal systems to try between two datums, tier by tier: the next tier only
/// where the one before gave nothing.
///
/// Two datums that are known here are tried on the systems of both at once. One that is known
/// by its code alone hangs on the system of the other, or on the hubs.
pub(super) fn tiers(from: VerticalDatum, to: VerticalDatum) -> Vec<Vec<(u32, u32)>> {
    match (horizontal_systems(from), horizontal_systems(to)) {
        (&[from], &[to]) if from == to => vec![vec![(from, to)]],
        (&[from], &[to]) => vec![vec![(from, from), (to, to), (from, to)]],
        (&[own], hubs) | (hubs, &[own]) => {
            let others = hubs.iter().filter(|&&hub| hub != own);
            std::iter::once(&own)
                .chain(others)
                .map(|&hub| vec![(hub, hub)])
                .collect()
        }
        (hubs, _) => hubs.iter().map(|&hub| vec![(hub, hub)]).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use VerticalDatum::{Epsg, Nap, Navd88, NgfIgn69, Ngvd29, Odn};

    #[test]
    fn two_known_datums_are_tried_on_the_systems_of_both() {
        assert_eq!(tiers(Odn, Nap), [[(ETRS89, ETRS89)]]);
        let both = [
            (NAD83, NAD83),
            (NAD83_2011, NAD83_2011),
            (NAD83, NAD83_2011),
        ];
        assert_eq!(tiers(Ngvd29, Navd88), [both]);
        assert!(tiers(Nap, NgfIgn69)[0].contains(&(ETRS89, RGF93_V2B)));
    }

    #[test]
    fn a_bare_code_is_tried_on_the_other_datum_s_system_first() {
        let tried = tiers(Epsg(5783), NgfIgn69);
        assert_eq!(tried[0], [(RGF93_V2B, RGF93_V2B)]);
        assert_eq!(tried.len(), 1 + HUBS.len());
        assert_eq!(tiers(Odn, Epsg(5783)).len(), HUBS.len());
        assert_eq!(tiers(Epsg(5783), Epsg(5710)).len(), HUBS.len());
    }
}
