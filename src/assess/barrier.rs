//! Step 6: the barrier at one opening.

use super::place::Place;
use super::study::Study;
use super::{AssessError, Method};
use crate::barrier::{BarrierAnswer, BarrierTask, MountPlace, Run, Surroundings, WaterBefore};
use crate::hazard::ZoneClass;
use crate::level::LevelSource;
use crate::load::WaveLevel;
use crate::quantity::{Elevation, Length, Velocity};
use crate::site::{Opening, Site};

/// An opening with its sill below the design level.
pub(super) struct BelowLevel<'a> {
    pub(super) opening: &'a Opening,
    pub(super) place: &'a Place,
    pub(super) sill: Elevation,
    /// Design level less sill.
    pub(super) protection_height: Length,
    /// Speed of the water there.
    pub(super) velocity: Option<Velocity>,
}

impl Study<'_> {
    /// Designs the barrier of an opening; `None` where no plank is needed.
    pub(super) fn barrier(
        &mut self,
        below: &BelowLevel<'_>,
        whose: &str,
    ) -> Result<Option<BarrierAnswer>, AssessError> {
        let (site, method) = (self.site, self.method);
        let answer = answer(site, method, below)?;
        if let Some(answer) = &answer {
            self.barrier_trail(answer, &method.kit, whose);
        }
        Ok(answer)
    }
}

fn answer(
    site: &Site,
    method: &Method,
    below: &BelowLevel<'_>,
) -> Result<Option<BarrierAnswer>, AssessError> {
    let opening = below.opening;
    let conditions = &site.conditions;
    let water = WaterBefore {
        depth: below.protection_height,
        sill_above_ground: match below.place.lowest_ground {
            Some(ground) => Some(below.sill.above(ground.elevation)?),
            None => None,
        },
        velocity: below.velocity,
        coastal: coastal(below.place),
        soil: opening.soil,
    };
    let (case, open) = water.case(conditions);
    let task = BarrierTask {
        run: Run::of_legs(opening.run.clone()).unwrap_or_else(|| Run::straight(opening.width)),
        height: below.protection_height,
        opening_height: opening.height,
        place: MountPlace {
            reveal: opening.reveal,
            face: opening.face,
            asked: opening.mount,
        },
        brace: opening.brace,
        water: case,
    };
    let rules = method.rules.in_zone(water.zone(conditions));
    let around = Surroundings {
        floor: opening.floor.as_ref().or(conditions.floor.as_ref()),
        jamb: opening.jamb.as_ref().or(conditions.jamb.as_ref()),
        gap: opening.gap,
        lift: conditions.fitting.lift,
    };
    let mut answer = BarrierAnswer::of(&task, &method.kit, &rules, around)?;
    if let Some(answer) = &mut answer {
        answer.design.open.splice(0..0, open);
    }
    Ok(answer)
}

/// Whether waves break there by the map. A level of the zone's own record includes their
/// crests; one of another source is taken as the water without them, the safe side.
fn coastal(place: &Place) -> Option<WaveLevel> {
    let zone = place.zone.as_ref()?;
    if zone.worst.class != ZoneClass::CoastalWave {
        return None;
    }
    let source = place.flood_level.as_ref().map(|level| level.decided.source);
    Some(match source {
        Some(LevelSource::ZoneStatic) => WaveLevel::Crest,
        _ => WaveLevel::Stillwater,
    })
}
