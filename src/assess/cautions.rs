//! Which cautions a case calls for.

use super::place::{GroundAnswer, Place, ZoneHere};
use super::{Detail, Method, OpeningAssessment};
use crate::barrier::{exceeds, twelve_hours};
use crate::design::Occupancy;
use crate::hazard::ZoneClass;
use crate::load::{Salinity, hydrostatic_pressure};
use crate::quantity::Length;
use crate::site::{Site, WallKind, WaterConditions};
use crate::verdict::{Caution, GroundSource, MapStatement, Verdict, WallWater};

/// The cautions of a case, those about the case first, those about every case last.
pub(super) fn gather(
    site: &Site,
    place: &Place<'_>,
    openings: &[OpeningAssessment<'_>],
    method: &Method,
) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if site.threshold.is_estimate() {
        cautions.push(Caution::ThresholdEstimated);
    }
    for place in std::iter::once(place).chain(
        openings
            .iter()
            .filter_map(|opening| opening.place.as_deref()),
    ) {
        about_zone(place, &mut cautions);
        about_level(place, &mut cautions);
        about_ground(place, &mut cautions);
    }
    for opening in openings {
        about_wall(
            opening,
            opening.place.as_deref().unwrap_or(place),
            method,
            &mut cautions,
        );
    }
    if method.detail == Detail::Full {
        about_every_case(site, openings, method, &mut cautions);
    }
    let mut seen: Vec<Caution> = Vec::with_capacity(cautions.len());
    for caution in cautions {
        if !seen.contains(&caution) {
            seen.push(caution);
        }
    }
    seen
}

/// What is true of every case, or of every case with a barrier or by the rule.
fn about_every_case(
    site: &Site,
    openings: &[OpeningAssessment<'_>],
    method: &Method,
    cautions: &mut Vec<Caution>,
) {
    about_use(site, cautions);
    let barriers = openings
        .iter()
        .any(|opening| opening.planks.is_some_and(|planks| planks.count > 0));
    if method.rule.terms.iter().all(|term| term.add.value <= 0.0) {
        cautions.push(Caution::NoFreeboard);
    }
    if barriers && method.kit.is_invented() {
        cautions.push(Caution::DemonstrationKit);
    }
    if barriers {
        about_barriers(site, openings, cautions);
    }
    cautions.extend([
        Caution::SurveySill,
        Caution::MapNotForecast,
        Caution::LocalCode,
    ]);
}

fn about_zone(place: &Place<'_>, cautions: &mut Vec<Caution>) {
    let unknown = |here: &ZoneHere<'_>| here.worst.class == ZoneClass::Unknown;
    // Without a level the verdict itself says that the zone is not known.
    if place.flood_level.is_some() && place.zone.as_ref().is_none_or(unknown) {
        cautions.push(Caution::ZoneUnknown {
            why: match &place.zone {
                Some(here) => format!("zone {}", here.worst.title()),
                None if place.zones_given => "no polygon holds the place".to_owned(),
                None => "no flood zones were given".to_owned(),
            },
        });
    }
    let Some(here) = &place.zone else { return };
    match here.worst.class {
        ZoneClass::CoastalWave => cautions.push(Caution::CoastalZone),
        ZoneClass::Floodway => cautions.push(Caution::Floodway),
        _ => {}
    }
    if let MapStatement::NoFlood(zone) = &place.statement {
        cautions.push(Caution::OutsideMappedFlood { zone: zone.clone() });
    }
    if !here.others.is_empty() {
        cautions.push(Caution::ZonesOverlap {
            taken: here.worst.title().to_string(),
            others: here
                .others
                .iter()
                .map(|zone| format!("{} ({})", zone.title(), zone.record()))
                .collect(),
        });
    }
    if here.on_edge {
        cautions.push(Caution::ZoneEdge);
    }
    for zone in std::iter::once(&here.worst).chain(&here.others) {
        cautions.extend(zone.remarks.iter().map(|remark| Caution::ZoneRemark {
            remark: format!("{}: {remark}", zone.record()),
        }));
    }
}

fn about_level(place: &Place<'_>, cautions: &mut Vec<Caution>) {
    let remarks = place.level_remarks.iter();
    cautions.extend(remarks.map(|remark| Caution::LevelRemark {
        remark: remark.clone(),
    }));
    let Some(level) = &place.flood_level else {
        return;
    };
    if let Some((other, difference)) = level.disagreement() {
        cautions.push(Caution::LevelsDisagree {
            decided_by: level.decided.source.title(),
            decided: level.decided.elevation,
            other_source: other.source.title(),
            other: other.elevation,
            difference,
        });
    }
    cautions.push(match level.decided.sd {
        Some(_) => Caution::LevelUncertainty,
        None => Caution::LevelUncertaintyUnknown,
    });
    for base in place
        .design_level
        .iter()
        .flat_map(|design| &design.not_compared)
    {
        cautions.push(Caution::LevelNotCompared {
            level: base.to_string(),
        });
    }
}

fn about_ground(place: &Place<'_>, cautions: &mut Vec<Caution>) {
    match &place.ground {
        GroundAnswer::NotAsked if place.lowest_ground.is_none() => {
            cautions.push(Caution::GroundUnknown {
                why: "no terrain model was given".to_owned(),
            });
        }
        GroundAnswer::NotAsked => {}
        GroundAnswer::Gap(gap) => cautions.push(Caution::GroundUnknown {
            why: gap.to_string(),
        }),
        GroundAnswer::Known(ground) => {
            if ground.no_data_nearby {
                cautions.push(Caution::TerrainVoidNear {
                    source: ground.source.to_string(),
                });
            }
            if ground.at_rim {
                cautions.push(Caution::TerrainRim {
                    source: ground.source.to_string(),
                });
            }
            if let Some(level) = &place.flood_level {
                let level = level.decided.elevation;
                if ground
                    .elevation
                    .above(level)
                    .is_ok_and(|by| by > Length::default())
                {
                    cautions.push(Caution::GroundAboveLevel {
                        ground: ground.elevation,
                        level,
                    });
                }
            }
        }
    }
}

/// The wall around an opening and below it.
fn about_wall(
    opening: &OpeningAssessment<'_>,
    place: &Place<'_>,
    method: &Method,
    cautions: &mut Vec<Caution>,
) {
    let MapStatement::DesignLevel(level) = &place.statement else {
        return;
    };
    let openings = || vec![opening.opening.id.clone()];
    let weakest = method
        .limits
        .wall(Some(WallKind::UnsupportedPanel))
        .depth
        .unwrap_or_default();
    let barrier = matches!(opening.verdict, Verdict::Protect | Verdict::Engineer);
    if barrier
        && opening.opening.wall.is_none()
        && opening
            .protection_height
            .is_some_and(|height| height > weakest)
    {
        cautions.push(Caution::WallNotStated {
            openings: openings(),
        });
    }
    let limit = method.limits.wall(opening.opening.wall).depth;
    // Where a barrier is needed, water above surveyed ground is a reason of the verdict. Where
    // the sill is high enough, the wall below it stands in the water all the same.
    if let (Some(ground), Some(limit)) = (place.lowest_ground, limit)
        && (ground.source == GroundSource::Terrain || opening.verdict == Verdict::Above)
        && let Ok(water) = level.above(ground.elevation)
        && exceeds(water, limit)
    {
        cautions.push(Caution::WallBelowSill(WallWater {
            openings: openings(),
            water,
            limit,
            ground: ground.source,
        }));
    }
}

/// What is true of every barrier, with the figures of the case.
fn about_barriers(site: &Site, openings: &[OpeningAssessment<'_>], cautions: &mut Vec<Caution>) {
    cautions.extend([Caution::StillWater, Caution::ShortDuration]);
    let depths = openings
        .iter()
        .filter_map(|opening| opening.protection_height);
    let depth = depths.fold(Length::default(), Length::max);
    let water = &site.conditions.water;
    cautions.push(uplift(water, depth));
    cautions.extend(short_warning(water));
}

/// What the water under the floor does, where the design level stands so high over it.
pub(super) fn uplift(water: &WaterConditions, depth: Length) -> Caution {
    let weight = water.salinity.unwrap_or(Salinity::Fresh).specific_weight();
    Caution::UpliftUnderFloor {
        depth,
        pressure: hydrostatic_pressure(depth, weight),
    }
}

/// That the warning is shorter than people are allowed to rely on, if it is.
pub(super) fn short_warning(water: &WaterConditions) -> Option<Caution> {
    let short = water.warning.filter(|time| *time < twelve_hours());
    short.map(|warning| Caution::ShortWarning { warning })
}

fn about_use(site: &Site, cautions: &mut Vec<Caution>) {
    match site.occupancy {
        Some(Occupancy::Residential) => cautions.push(Caution::ResidentialCompliance),
        None => cautions.push(Caution::OccupancyNotStated),
        Some(Occupancy::Commercial | Occupancy::Critical) => {}
    }
}
