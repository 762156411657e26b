//! Step 6: the barrier at one opening.

use super::barrier_trail::barrier_trail;
use super::place::Place;
use super::study::Study;
use super::{AssessError, Trail};
use crate::barrier::{
    BarrierAnswer, BarrierTask, DesignRules, Kit, MountPlace, Run, Surroundings, WaterBefore,
};
use crate::hazard::ZoneClass;
use crate::level::LevelSource;
use crate::load::WaveLevel;
use crate::quantity::{Elevation, Length, UnitSystem, Velocity};
use crate::site::{Conditions, Opening};

/// An opening with its sill below the design level.
pub(super) struct BelowLevel<'a> {
    pub(super) opening: &'a Opening,
    pub(super) place: &'a Place<'a>,
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
        whose: &dyn Fn() -> String,
    ) -> Result<Option<Box<BarrierAnswer>>, AssessError> {
        let ground = below.place.lowest_ground;
        let request = Request {
            opening: below.opening,
            conditions: &self.site.conditions,
            kit: &self.method.kit,
            rules: &self.method.rules,
            units: self.method.units,
            height: below.protection_height,
            water: WaterBefore {
                depth: below.protection_height,
                sill_above_ground: ground
                    .map(|ground| below.sill.above(ground.elevation))
                    .transpose()?,
                velocity: below.velocity,
                coastal: coastal(below.place),
                soil: below.opening.soil,
            },
        };
        request.answer(&mut self.trail, whose)
    }
}

/// What is asked of one barrier, whether maps say how high the water stands or the user.
pub(super) struct Request<'a> {
    pub(super) opening: &'a Opening,
    pub(super) conditions: &'a Conditions,
    pub(super) kit: &'a Kit,
    pub(super) rules: &'a DesignRules,
    /// Height over the sill that it has to reach.
    pub(super) height: Length,
    pub(super) water: WaterBefore,
    /// The units of sentences.
    pub(super) units: UnitSystem,
}

impl Request<'_> {
    /// The barrier, with its figures in the trail. Boxed, because most openings have none and
    /// pass it on all the same.
    pub(super) fn answer(
        &self,
        trail: &mut Trail,
        whose: &dyn Fn() -> String,
    ) -> Result<Option<Box<BarrierAnswer>>, AssessError> {
        let (opening, conditions) = (self.opening, self.conditions);
        let Some(width) = opening.width else {
            return Ok(None);
        };
        let case = self.water.case(conditions);
        let run = Run::of_legs(opening.run.clone());
        let task = BarrierTask {
            run: run.unwrap_or_else(|| Run::straight(width)),
            height: self.height,
            opening_height: opening.height,
            place: MountPlace {
                reveal: opening.reveal,
                face: opening.face,
                asked: opening.mount,
            },
            brace: opening.brace,
            water: case,
        };
        let around = Surroundings {
            floor: opening.floor.as_ref().or(conditions.floor.as_ref()),
            jamb: opening.jamb.as_ref().or(conditions.jamb.as_ref()),
            gap: opening.gap,
            lift: conditions.fitting.lift,
        };
        let rules = self.rules.in_zone(self.water.zone(conditions));
        let answer = BarrierAnswer::of(&task, self.kit, &rules, around).map_err(|error| {
            AssessError::Barrier {
                opening: opening.id.clone(),
                error: Box::new(error),
            }
        })?;
        if let Some(answer) = &answer {
            barrier_trail(trail, answer, self.kit, &whose(), self.units);
        }
        Ok(answer.map(Box::new))
    }
}

/// Whether waves break there by the map. A level of the zone's own record includes their
/// crests; one of another source is taken as the water without them, the safe side.
fn coastal(place: &Place<'_>) -> Option<WaveLevel> {
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
