//! What maps, terrain and rule say about one place.

use super::{AssessError, Method, Sources, Trail, Value};
use crate::crs::CrsError;
use crate::design::{Base, BaseLevel, DesignGap, DesignLevel, KnownLevels, design_level};
use crate::hazard::{Zone, ZoneClass, ZonesHere};
use crate::level::{FloodLevel, LevelAnswer, Question, Refusal, flood_level};
use crate::quantity::{AnnualChance, Elevation};
use crate::site::{Location, Site};
use crate::terrain::{Gap, Ground};
use crate::verdict::{GroundSource, MapStatement, Missing};

/// Everything that is known at one place before an opening is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Where.
    pub location: Location,
    /// The zones there; `None` where no polygon holds the place.
    pub zone: Option<ZoneHere>,
    /// Whether there was a zone layer to look the place up in.
    pub zones_given: bool,
    /// The ground there.
    pub ground: GroundAnswer,
    /// The lowest ground around it, and who says so.
    pub lowest_ground: Option<LowestGround>,
    /// The flood level with its ranked sources.
    pub flood_level: Option<FloodLevel>,
    /// The design level with how it came about.
    pub design_level: Option<DesignLevel>,
    /// The design level, that there is no flood by the map, or what is missing.
    pub statement: MapStatement,
}

/// The zones that hold a place.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneHere {
    /// The worst of them: it decides.
    pub worst: Zone,
    /// The others.
    pub others: Vec<Zone>,
    /// Whether the place lies on an edge.
    pub on_edge: bool,
}

/// The ground at a place, or why it is not known.
#[derive(Clone, Debug, PartialEq)]
pub enum GroundAnswer {
    /// The ground.
    Known(Ground),
    /// The terrain has no value there or does not reach there.
    Gap(Gap),
    /// No terrain was given.
    NotAsked,
}

/// The lowest ground near the walls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LowestGround {
    /// The ground.
    pub elevation: Elevation,
    /// Who says so.
    pub source: GroundSource,
}

/// Studies one place; `whose` is empty for the site and names the opening otherwise.
pub(super) fn study(
    site: &Site,
    location: Location,
    whose: &str,
    sources: &Sources,
    method: &Method,
    trail: &mut Trail,
) -> Result<Place, AssessError> {
    let here = zones(sources, location)?;
    trail_zones(&here, sources, whose, trail);
    let ground = ground(site, location, whose, sources, trail)?;
    let lowest_ground = lowest_ground(site, location, whose, sources, method, trail)?;
    let answer = flood_level(&Question {
        event: method.event,
        datum: site.threshold.datum(),
        stated: &site.flood_levels,
        zones: &here.zones,
        highest_grade: site.grade.highest.filter(|_| location == site.location),
    });
    trail_levels(&answer, whose, trail);
    let (statement, design_level) = match &answer.level {
        Some(level) => {
            // A level of the same or a higher authority on another datum may be the higher one.
            let weighty = |refusal: &&Refusal| refusal.candidate.source <= level.decided.source;
            if let Some(refusal) = answer.refused.iter().find(weighty) {
                return Err(other_datum(site, refusal));
            }
            designed(
                site,
                BaseLevel::Known(level.decided.elevation),
                &here,
                method,
            )
        }
        None => match answer.refused.first() {
            Some(refusal) => return Err(other_datum(site, refusal)),
            None => without_level(site, &here, sources, method),
        },
    };
    trail_design(design_level.as_ref(), whose, method, trail);
    let zone = here.zones.split_first().map(|(worst, others)| ZoneHere {
        worst: (*worst).clone(),
        others: others.iter().map(|zone| (*zone).clone()).collect(),
        on_edge: here.on_edge,
    });
    Ok(Place {
        location,
        zone,
        zones_given: !sources.zones.is_empty(),
        ground,
        lowest_ground,
        flood_level: answer.level,
        design_level,
        statement,
    })
}

fn zones(sources: &Sources, location: Location) -> Result<ZonesHere<'_>, AssessError> {
    let mut maps = Vec::with_capacity(sources.zones.len());
    for map in &sources.zones {
        match map.at(location) {
            Ok(here) => maps.push(here),
            // What a layer's coordinates cannot express, its polygons do not hold.
            Err(CrsError::OutsideDomain { .. }) => {}
            Err(error) => return Err(error.into()),
        }
    }
    Ok(ZonesHere::join(maps))
}

fn ground(
    site: &Site,
    location: Location,
    whose: &str,
    sources: &Sources,
    trail: &mut Trail,
) -> Result<GroundAnswer, AssessError> {
    let quantity = format!("ground{whose}");
    if sources.terrain.dems().is_empty() {
        trail.add(quantity, Value::Unknown, "no terrain model was given", "");
        return Ok(GroundAnswer::NotAsked);
    }
    Ok(match sources.terrain.ground_at(location)? {
        Ok(ground) => {
            on_datum_of_threshold(site, ground.elevation, || {
                format!("the terrain {}", ground.source)
            })?;
            trail.add(
                quantity,
                Value::Elevation(ground.elevation),
                "bilinear between the four nearest cell centres of the terrain",
                ground.source.clone(),
            );
            GroundAnswer::Known(ground)
        }
        Err(gap) => {
            trail.add(quantity, Value::Unknown, gap.to_string(), "");
            GroundAnswer::Gap(gap)
        }
    })
}

fn lowest_ground(
    site: &Site,
    location: Location,
    whose: &str,
    sources: &Sources,
    method: &Method,
    trail: &mut Trail,
) -> Result<Option<LowestGround>, AssessError> {
    let quantity = format!(
        "lowest ground near the building{}",
        if whose.is_empty() {
            String::new()
        } else {
            format!(",{whose}")
        }
    );
    // The surveyed grade is that of the building; an opening elsewhere has its own ground.
    if let Some(elevation) = site.grade.lowest.filter(|_| location == site.location) {
        trail.add(
            quantity,
            Value::Elevation(elevation),
            "lowest adjacent grade as stated",
            "site file",
        );
        return Ok(Some(LowestGround {
            elevation,
            source: GroundSource::Surveyed,
        }));
    }
    if sources.terrain.dems().is_empty() {
        return Ok(None);
    }
    let Ok(grade) = sources
        .terrain
        .grade_around(location, method.grade_radius)?
    else {
        return Ok(None);
    };
    on_datum_of_threshold(site, grade.lowest, || {
        format!("the terrain {}", grade.source)
    })?;
    trail.add(
        quantity,
        Value::Elevation(grade.lowest),
        format!(
            "lowest of {} points of the terrain within {}{}",
            grade.samples,
            method.units.distance(method.grade_radius),
            match grade.without_value {
                0 => String::new(),
                count => format!("; {count} of them have no value"),
            }
        ),
        grade.source,
    );
    Ok(Some(LowestGround {
        elevation: grade.lowest,
        source: GroundSource::Terrain,
    }))
}

fn on_datum_of_threshold(
    site: &Site,
    elevation: Elevation,
    what: impl Fn() -> String,
) -> Result<(), AssessError> {
    if elevation.datum() == site.threshold.datum() {
        return Ok(());
    }
    Err(AssessError::Datum {
        place: site.threshold_place.clone(),
        threshold: site.units.elevation(site.threshold),
        threshold_datum: site.threshold.datum(),
        what: what(),
        datum: elevation.datum(),
        accepted: format!(
            "threshold and sills converted to {}, or a terrain model on {}",
            elevation.datum(),
            site.threshold.datum()
        ),
    })
}

fn other_datum(site: &Site, refusal: &Refusal) -> AssessError {
    let needed = site.threshold.datum();
    let theirs = refusal.candidate.elevation.datum();
    let converted = format!(
        "that level converted to {needed} and stated as [[flood_level]] with the source of the conversion"
    );
    AssessError::Datum {
        accepted: if theirs.is_one_surface() {
            format!("threshold and sills converted to {theirs}, or {converted}")
        } else {
            converted
        },
        place: site.threshold_place.clone(),
        threshold: site.units.elevation(site.threshold),
        threshold_datum: needed,
        what: format!(
            "the flood level ({}, {})",
            refusal.candidate.source.title(),
            refusal.candidate.reference
        ),
        datum: theirs,
    }
}

/// Applies the rule to a known level, or to the fact that the flood does not reach the place.
fn designed(
    site: &Site,
    flood: BaseLevel,
    here: &ZonesHere<'_>,
    method: &Method,
) -> (MapStatement, Option<DesignLevel>) {
    let known = KnownLevels {
        flood,
        stated: &site.flood_levels,
    };
    match design_level(&method.rule, site.occupancy, known) {
        Ok(design) => (MapStatement::DesignLevel(design.elevation), Some(design)),
        Err(DesignGap::NotReached) => (MapStatement::NoFlood(worst_title(here)), None),
        Err(DesignGap::MissingLevel { base, at_least }) => (
            MapStatement::Unresolved(Missing::RuleLevel { base, at_least }),
            None,
        ),
        Err(DesignGap::MissingOccupancy) => (MapStatement::Unresolved(Missing::Occupancy), None),
        // The site file refuses stated levels on another datum, and a flood level on another
        // datum never gets here; should one, the answer is that the level is not known.
        Err(DesignGap::Datums(_)) => (
            MapStatement::Unresolved(Missing::RuleLevel {
                base: Base::FloodLevel,
                at_least: None,
            }),
            None,
        ),
    }
}

/// What follows where no source has a level: never a dry building by default.
fn without_level(
    site: &Site,
    here: &ZonesHere<'_>,
    sources: &Sources,
    method: &Method,
) -> (MapStatement, Option<DesignLevel>) {
    let unresolved = |missing| (MapStatement::Unresolved(missing), None);
    let Some(zone) = here.zones.first() else {
        return unresolved(if sources.zones.is_empty() {
            Missing::Zones
        } else {
            Missing::ZoneHere
        });
    };
    let title = zone.title();
    match zone.class {
        ZoneClass::Minimal => designed(
            site,
            BaseLevel::NotReached(AnnualChance::ONE_IN_500),
            here,
            method,
        ),
        ZoneClass::Rare | ZoneClass::Unspecified => designed(
            site,
            BaseLevel::NotReached(AnnualChance::ONE_PERCENT),
            here,
            method,
        ),
        ZoneClass::BehindLevee => unresolved(Missing::LeveeLevel { zone: title }),
        ZoneClass::Unknown => unresolved(Missing::KnownZone { zone: title }),
        ZoneClass::SheetFlow if site.grade.highest.is_none() => {
            unresolved(Missing::HighestGrade { zone: title })
        }
        _ => unresolved(Missing::LevelInZone {
            zone: title,
            why: why_no_level(zone),
        }),
    }
}

fn why_no_level(zone: &Zone) -> String {
    let refused: Vec<String> = zone.remarks.iter().map(ToString::to_string).collect();
    if !refused.is_empty() {
        refused.join("; ")
    } else if zone.level_expected {
        "the map keeps it in another layer (flood-level lines or cross-sections) and the flood study; state it as [[flood_level]]".to_owned()
    } else {
        "the map gives none for such a zone; ask the authority and state it as [[flood_level]]"
            .to_owned()
    }
}

fn worst_title(here: &ZonesHere<'_>) -> String {
    here.zones
        .first()
        .map_or_else(String::new, |zone| zone.title())
}

fn trail_zones(here: &ZonesHere<'_>, sources: &Sources, whose: &str, trail: &mut Trail) {
    let quantity = format!("flood zone{whose}");
    match here.zones.first() {
        Some(zone) => trail.add(
            quantity,
            Value::Words(zone.title()),
            match here.zones.len() {
                1 => "the polygon that holds the place".to_owned(),
                count => format!("the worst of {count} polygons that hold the place"),
            },
            zone.record(),
        ),
        None if sources.zones.is_empty() => {
            trail.add(quantity, Value::Unknown, "no flood zones were given", "");
        }
        None => trail.add(quantity, Value::Unknown, "no polygon holds the place", ""),
    }
}

fn trail_levels(answer: &LevelAnswer, whose: &str, trail: &mut Trail) {
    if let Some(level) = &answer.level {
        let decided = &level.decided;
        trail.add(
            format!("flood level{whose}, {} annual chance", decided.chance),
            Value::Elevation(decided.elevation),
            format!("{}: {}", decided.source.title(), decided.how),
            decided.reference.clone(),
        );
        if let Some(sd) = decided.sd {
            trail.add(
                format!("standard deviation of the flood level{whose}"),
                Value::Length(sd),
                decided.how.clone(),
                "",
            );
        }
        for other in &level.others {
            trail.add(
                format!("flood level{whose}, other source"),
                Value::Elevation(other.elevation),
                format!(
                    "{}: {}; not used, a source with more authority is there",
                    other.source.title(),
                    other.how
                ),
                other.reference.clone(),
            );
        }
    } else if answer.refused.is_empty() {
        trail.add(
            format!("flood level{whose}"),
            Value::Unknown,
            "no source has a level for the place",
            "",
        );
    }
    for Refusal { candidate, needed } in &answer.refused {
        trail.add(
            format!("flood level{whose}, refused"),
            Value::Elevation(candidate.elevation),
            format!(
                "{}: it is on {}, {needed} is needed",
                candidate.source.title(),
                candidate.elevation.datum()
            ),
            candidate.reference.clone(),
        );
    }
}

fn trail_design(design: Option<&DesignLevel>, whose: &str, method: &Method, trail: &mut Trail) {
    let Some(design) = design else { return };
    if let Some(freeboard) = design.freeboard {
        trail.add(
            format!("freeboard{whose}"),
            Value::Length(freeboard),
            format!("rule {}: {}", method.rule.id, method.rule.name),
            method.rule.citation.to_string(),
        );
    }
    trail.add(
        format!("design level{whose}"),
        Value::Elevation(design.elevation),
        format!(
            "{} + {}",
            design.governing,
            method.units.height(design.added)
        ),
        format!("rule {}", method.rule.id),
    );
}
