//! One opening before the water.

use super::barrier::BelowLevel;
use super::place::Place;
use super::study::{Spot, Study};
use super::{AssessError, Method, OpeningAssessment, Trail, Value};
use crate::barrier::{Kit, PlankStack, planks_for};
use crate::hazard::ZoneClass;
use crate::load::{Hydrostatic, Salinity, WATER_WEIGHT_SOURCE};
use crate::quantity::{Elevation, Length, Velocity};
use crate::site::{Opening, Sill, Site};
use crate::statement::Choice;
use crate::verdict::{Evidence, MapStatement, Reason, Verdict, judge};

impl<'a> Study<'a> {
    /// Studies one opening; `site_place` is what is known where the site is.
    pub(super) fn opening(
        &mut self,
        opening: &'a Opening,
        site_place: &Place<'a>,
    ) -> Result<OpeningAssessment<'a>, AssessError> {
        let whose = || format!(" at \"{}\"", opening.id);
        let own_place = match opening.location {
            Some(location) => Some(Box::new(self.place(Spot {
                location,
                whose: &whose(),
            })?)),
            None => None,
        };
        let place = own_place.as_deref().unwrap_or(site_place);
        let (site, method) = (self.site, self.method);
        let threshold = self.threshold;
        let trail = &mut self.trail;
        let sill = sill(site, threshold, opening, &whose, trail);

        let mut depth = None;
        if let (Some(level), Some(sill)) = (&place.flood_level, sill) {
            let water = level.decided.elevation.above(sill)?.max(Length::default());
            trail.note(|trail| {
                trail.add(
                    format!("depth{}", whose()),
                    Value::Length(water),
                    "flood level − sill, not less than nothing",
                    "",
                );
            });
            depth = Some(water);
        }
        let barrier = match (&place.statement, sill) {
            (MapStatement::DesignLevel(level), Some(sill)) => {
                Some(Barrier::up_to(*level, sill, site, &whose, method, trail)?)
            }
            _ => None,
        };
        let stack = barrier
            .as_ref()
            .map(|barrier| barrier.planks)
            .filter(|planks| planks.count > 0);
        let (mut chance_over_top, mut at_sill, mut at_barrier_top) = (None, None, None);
        if let Some(sill) = sill {
            at_sill = self.yearly(place, sill, &|| format!("sill{}", whose()))?;
            if let Some(planks) = stack {
                chance_over_top = self.over_top(place, sill, planks.height, &whose)?;
                let top = sill.raised(planks.height);
                at_barrier_top =
                    self.yearly(place, top, &|| format!("top of the barrier{}", whose()))?;
            }
        }
        let evidence = evidence(site, opening, place, sill);
        let mut reasons = judge(&evidence, &method.limits)?;
        let designed = match (sill, &barrier) {
            (Some(sill), Some(barrier)) => self.barrier(
                &BelowLevel {
                    opening,
                    place,
                    sill,
                    protection_height: barrier.protection_height,
                    velocity: evidence.velocity,
                },
                &whose,
            )?,
            _ => None,
        };
        let shortfalls = designed.iter().flat_map(|answer| &answer.design.shortfalls);
        reasons.extend(shortfalls.cloned().map(Reason::Barrier));
        Reason::weightiest_first(&mut reasons);
        let verdict = Verdict::of(&reasons);
        self.trail.note(|trail| {
            trail.add(
                format!("verdict{}", whose()),
                Value::Words(verdict.word().to_owned()),
                "the worst that the opening's reasons ask for",
                "data/limits.toml",
            );
        });
        Ok(OpeningAssessment {
            opening,
            sill,
            depth,
            protection_height: barrier.as_ref().map(|barrier| barrier.protection_height),
            planks: barrier.as_ref().map(|barrier| barrier.planks),
            at_design_level: barrier.as_ref().map(|barrier| barrier.at_design_level),
            at_top: barrier.as_ref().map(|barrier| barrier.at_top),
            chance_over_top,
            water_at_sill: at_sill,
            water_at_top: at_barrier_top,
            barrier: designed,
            verdict,
            reasons,
            place: own_place,
        })
    }
}

fn sill(
    site: &Site,
    threshold: Option<Elevation>,
    opening: &Opening,
    whose: &dyn Fn() -> String,
    trail: &mut Trail,
) -> Option<Elevation> {
    let (sill, how) = match opening.sill {
        Sill::Elevation(elevation) => (Some(elevation), "as stated"),
        Sill::AboveThreshold(height) => (
            threshold.map(|threshold| threshold.raised(height)),
            "threshold + stated height above it",
        ),
        Sill::Threshold => (
            threshold,
            "no sill is stated for the opening: the building's threshold",
        ),
        Sill::Unknown => (None, "stated as unknown"),
    };
    trail.note(|trail| {
        trail.add(
            format!("sill{}", whose()),
            sill.map_or(Value::Unknown, Value::Elevation),
            how,
            opening
                .sill_place
                .as_ref()
                .unwrap_or(&site.threshold_place)
                .to_string(),
        );
    });
    sill
}

/// A barrier up to the design level, with the water before it.
struct Barrier {
    protection_height: Length,
    planks: PlankStack,
    at_design_level: Hydrostatic,
    at_top: Hydrostatic,
}

impl Barrier {
    fn up_to(
        level: Elevation,
        sill: Elevation,
        site: &Site,
        whose: &dyn Fn() -> String,
        method: &Method,
        trail: &mut Trail,
    ) -> Result<Self, AssessError> {
        let protection_height = level.above(sill)?.max(Length::default());
        let planks = planks_for(protection_height, &method.kit);
        let salinity = site.conditions.water.salinity.unwrap_or(Salinity::Fresh);
        let weight = salinity.specific_weight();
        let barrier = Self {
            protection_height,
            planks,
            at_design_level: Hydrostatic::of_depth(protection_height, weight),
            at_top: Hydrostatic::of_depth(planks.height, weight),
        };
        trail.note(|trail| barrier.tell(site, &whose(), &method.kit, trail));
        Ok(barrier)
    }

    fn tell(&self, site: &Site, whose: &str, kit: &Kit, trail: &mut Trail) {
        trail.add(
            format!("protection height{whose}"),
            Value::Length(self.protection_height),
            "design level − sill, not less than nothing",
            "",
        );
        trail.add(
            format!("planks{whose}"),
            Value::Count(self.planks.count),
            "whole planks that reach the protection height",
            kit.name.clone(),
        );
        trail.add(
            format!("barrier height{whose}"),
            Value::Length(self.planks.height),
            "planks × cover height of one plank",
            kit.citation.to_string(),
        );
        let water = match site.conditions.water.salinity {
            Some(stated) => format!("still {} water", stated.word()),
            None => format!(
                "still water, taken as {} because nobody states its salinity",
                Salinity::Fresh.word()
            ),
        };
        for (load, case) in [
            (&self.at_design_level, "water at the design level"),
            (&self.at_top, "water at the top of the barrier"),
        ] {
            tell_load(load, case, &water, whose, trail);
        }
    }
}

fn tell_load(load: &Hydrostatic, case: &str, water: &str, whose: &str, trail: &mut Trail) {
    let mut add = |what: &str, value, formula: &str| {
        trail.add(
            format!("{what}{whose}, {case}"),
            value,
            format!("{formula}, {water}"),
            WATER_WEIGHT_SOURCE,
        );
    };
    add(
        "pressure at the sill",
        Value::Pressure(load.pressure),
        "γ·h",
    );
    add("force", Value::LineLoad(load.force), "γ·h²/2");
    add(
        "moment about the sill",
        Value::Moment(load.moment),
        "γ·h³/6",
    );
}

fn evidence(
    site: &Site,
    opening: &Opening,
    place: &Place<'_>,
    sill: Option<Elevation>,
) -> Evidence {
    let zone = place.zone.as_ref().map(|here| here.worst);
    let from_threshold = matches!(opening.sill, Sill::Threshold | Sill::AboveThreshold(_));
    let has = |class| zone.is_some_and(|zone| zone.class == class);
    Evidence {
        sill,
        needs_ground: from_threshold && site.threshold.is_estimate(),
        design: place.statement.clone(),
        coastal_zone: zone
            .filter(|_| has(ZoneClass::CoastalWave))
            .map(|zone| zone.code.clone()),
        river_beside: place
            .beside
            .as_ref()
            .map(|beside| (beside.elevation, beside.source.title())),
        floodway: has(ZoneClass::Floodway),
        waves: site.conditions.water.waves,
        velocity: faster(
            site.conditions.water.velocity,
            zone.and_then(|zone| zone.velocity),
        ),
        wall: opening.wall,
        lowest_ground: place
            .lowest_ground
            .map(|ground| (ground.elevation, ground.source)),
    }
}

/// The faster of two speeds: a map's is not slowed down by a statement, nor the other way.
fn faster(stated: Option<Velocity>, mapped: Option<Velocity>) -> Option<Velocity> {
    match (stated, mapped) {
        (Some(stated), Some(mapped)) => Some(stated.max(mapped)),
        (one, other) => one.or(other),
    }
}
