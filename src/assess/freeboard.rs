//! Step 4: the design level by the freeboard rule, or what follows without a flood level.

use super::study::{Spot, Study};
use super::{AssessError, Value};
use crate::design::{
    BaseLevel, DesignGap, DesignLevel, FloodEvent, KnownLevels, StatedLevel, design_level,
};
use crate::hazard::{Zone, ZoneClass, ZonesHere};
use crate::level::{Curve, LevelAnswer, Silence};
use crate::quantity::AnnualChance;
use crate::verdict::{MapStatement, Missing};

/// What map and rule say, with the design level where there is one.
type Designed = (MapStatement, Option<DesignLevel>);

impl Study<'_> {
    pub(super) fn design(
        &mut self,
        spot: Spot<'_>,
        here: &ZonesHere<'_>,
        answer: &LevelAnswer,
    ) -> Result<Designed, AssessError> {
        let designed = match &answer.level {
            Some(level) => self.by_rule(
                spot,
                here,
                answer,
                BaseLevel::Known(level.decided.elevation),
            )?,
            None => self.without_level(spot, here, answer)?,
        };
        self.trail_design(designed.1.as_ref(), spot);
        Ok(designed)
    }

    /// Applies the rule to a known level, or to the fact that the flood does not reach the place.
    fn by_rule(
        &mut self,
        spot: Spot<'_>,
        here: &ZonesHere<'_>,
        answer: &LevelAnswer,
        flood: BaseLevel,
    ) -> Result<Designed, AssessError> {
        let stated = self.known_levels(spot, answer.curve.as_ref())?;
        let known = KnownLevels {
            flood,
            stated: &stated,
        };
        let unresolved = |missing| Ok((MapStatement::Unresolved(missing), None));
        match design_level(&self.method.rule, self.site.occupancy, known) {
            Ok(design) => Ok((MapStatement::DesignLevel(design.elevation), Some(design))),
            Err(DesignGap::NotReached) => Ok((MapStatement::NoFlood(worst_title(here)), None)),
            Err(DesignGap::MissingLevel { base, at_least }) => {
                unresolved(Missing::RuleLevel { base, at_least })
            }
            Err(DesignGap::MissingOccupancy) => unresolved(Missing::Occupancy),
            Err(DesignGap::Datums(error)) => Err(error.into()),
        }
    }

    /// The levels of other floods, on the datum of the threshold: those that the user states,
    /// and those of rasters.
    fn known_levels(
        &mut self,
        spot: Spot<'_>,
        curve: Option<&Curve>,
    ) -> Result<Vec<StatedLevel>, AssessError> {
        let mut levels = self.site.flood_levels.clone();
        for level in &mut levels {
            let (event, source) = (level.event, &level.source);
            let what = || format!("the {event} ({source})");
            level.elevation = self.on_threshold_datum(level.elevation, spot, &what)?;
        }
        let Some(curve) = curve else {
            return Ok(levels);
        };
        for level in curve.stages.levels() {
            let event = FloodEvent::Chance(level.chance);
            if levels.iter().all(|stated| !stated.event.same_event(event)) {
                levels.push(StatedLevel {
                    event,
                    elevation: level.elevation,
                    sd: level.sd,
                    source: curve.reference.clone(),
                });
            }
        }
        Ok(levels)
    }

    /// What follows where no source has a level: never a dry building by default.
    fn without_level(
        &mut self,
        spot: Spot<'_>,
        here: &ZonesHere<'_>,
        answer: &LevelAnswer,
    ) -> Result<Designed, AssessError> {
        let unresolved = |missing| Ok((MapStatement::Unresolved(missing), None));
        let Some(zone) = here.zones.first() else {
            return unresolved(match self.sources.zones.as_slice() {
                [] => Missing::Zones {
                    why: silences(answer),
                },
                _ => Missing::ZoneHere,
            });
        };
        let event = self.method.event;
        let title = || zone.title().to_string();
        match zone.class {
            ZoneClass::Minimal | ZoneClass::Rare | ZoneClass::Unspecified => {
                let ruled_out = ruled_out(zone.class);
                // A flood that is rarer than those the map rules out may well reach the place.
                if event >= ruled_out || event.same_event(ruled_out) {
                    return self.by_rule(spot, here, answer, BaseLevel::NotReached(ruled_out));
                }
                let why = format!(
                    "the map rules out floods down to {ruled_out} a year there, and rarer ones are not mapped with a level"
                );
                unresolved(Missing::LevelOfEvent {
                    event,
                    zone: title(),
                    why,
                })
            }
            ZoneClass::BehindLevee => unresolved(Missing::LeveeLevel { zone: title() }),
            ZoneClass::Unknown => unresolved(Missing::KnownZone { zone: title() }),
            // The level of its own flood may well be known.
            _ if !zone.annual_chance.same_event(event) => unresolved(Missing::LevelOfEvent {
                event,
                zone: title(),
                why: why_not_of_event(zone, answer),
            }),
            ZoneClass::SheetFlow if zone.remarks.is_empty() => {
                unresolved(Missing::HighestGrade { zone: title() })
            }
            _ => unresolved(Missing::LevelInZone {
                zone: title(),
                why: why_no_level(zone, answer),
            }),
        }
    }

    fn trail_design(&mut self, design: Option<&DesignLevel>, spot: Spot<'_>) {
        let Some(design) = design else { return };
        let (rule, units) = (&self.method.rule, self.method.units);
        self.trail.note(|trail| {
            if let Some(freeboard) = design.freeboard {
                trail.add(
                    format!("freeboard{}", spot.whose),
                    Value::Length(freeboard),
                    format!("rule {}: {}", rule.id, rule.name),
                    rule.citation.to_string(),
                );
            }
            trail.add(
                format!("design level{}", spot.whose),
                Value::Elevation(design.elevation),
                format!("{} + {}", design.governing, units.height(design.added)),
                format!("rule {}", rule.id),
            );
        });
    }
}

/// The rarest flood that the map says does not reach a zone outside its floods.
const fn ruled_out(class: ZoneClass) -> AnnualChance {
    match class {
        ZoneClass::Minimal => AnnualChance::ONE_IN_500,
        _ => AnnualChance::ONE_PERCENT,
    }
}

/// What each source says, and what would give a level.
fn why_no_level(zone: &Zone, answer: &LevelAnswer) -> String {
    let refused = zone.remarks.iter().map(ToString::to_string);
    let said: Vec<String> = refused.chain(silences(answer)).collect();
    if !said.is_empty() {
        said.join("; ")
    } else if zone.level_expected {
        "the map keeps it in another layer (--lines, --sections) and the flood study; state it as [[flood_level]]".to_owned()
    } else {
        "the map gives none for such a zone; ask the authority and state it as [[flood_level]]"
            .to_owned()
    }
}

/// The same for a flood that the zone is not the extent of.
fn why_not_of_event(zone: &Zone, answer: &LevelAnswer) -> String {
    let own = format!(
        "the zone is that of the {} flood, and nothing is extrapolated; give a raster of the \
         flood (--surface, --depth) or state its level as [[flood_level]]",
        zone.annual_chance
    );
    [own]
        .into_iter()
        .chain(silences(answer))
        .collect::<Vec<_>>()
        .join("; ")
}

/// What the sources say that were asked and have no level.
fn silences(answer: &LevelAnswer) -> Vec<String> {
    let say = |Silence { source, why }: &Silence| format!("{}: {why}", source.title());
    answer.silent.iter().map(say).collect()
}

fn worst_title(here: &ZonesHere<'_>) -> String {
    here.zones
        .first()
        .map_or_else(String::new, |zone| zone.title().to_string())
}
