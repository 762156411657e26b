//! Asking all sources.

use super::{Candidate, FloodLevel, depth_over_grade, stated, zone_static};
use crate::design::StatedLevel;
use crate::hazard::{Zone, ZoneClass};
use crate::quantity::{AnnualChance, Elevation, VerticalDatum};

/// What is asked: the level of an event at a place, on a datum.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// The event.
    pub event: AnnualChance,
    /// The datum that the answer has to stand on.
    pub datum: VerticalDatum,
    /// Levels that the user states.
    pub stated: &'a [StatedLevel],
    /// The zones that hold the place, the worst first.
    pub zones: &'a [&'a Zone],
    /// The highest ground against the wall, as surveyed.
    pub highest_grade: Option<Elevation>,
}

impl Question<'_> {
    /// The zones whose records may say how high the water of the worst zone stands: those of
    /// the same kind of flood. A wave zone without a level does not borrow the level of the
    /// calmer zone below it; a floodway does, because it is a part of the detailed zone.
    pub(super) fn deciding_zones(&self) -> impl Iterator<Item = &Zone> {
        let worst = self.zones.first().map(|zone| kind(zone.class));
        self.zones
            .iter()
            .copied()
            .take_while(move |zone| Some(kind(zone.class)) == worst)
    }
}

/// The class that stands for all classes with the same water.
const fn kind(class: ZoneClass) -> ZoneClass {
    match class {
        ZoneClass::Floodway => ZoneClass::Detailed,
        other => other,
    }
}

/// The level, and what was refused on the way.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LevelAnswer {
    /// The level with its ranked sources; `None` where no source has one.
    pub level: Option<FloodLevel>,
    /// Sources that have a level on another datum.
    pub refused: Vec<Refusal>,
}

/// A level that cannot be used, because it stands on another datum than the threshold.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The level.
    pub candidate: Candidate,
    /// The datum that was needed.
    pub needed: VerticalDatum,
}

/// Asks every source for the flood level.
///
/// 1. Each source that has a level of the event gives a candidate.
/// 2. A candidate on another datum than the one asked for is refused, never shifted by
///    nothing.
/// 3. The rest is ranked by authority ([`super::LevelSource`]).
#[must_use]
pub fn flood_level(question: &Question<'_>) -> LevelAnswer {
    let found = stated::candidate(question)
        .into_iter()
        .chain(zone_static::candidates(question))
        .chain(depth_over_grade::candidate(question));
    let (usable, others): (Vec<_>, Vec<_>) = found.partition(|candidate| {
        candidate.elevation.datum() == question.datum && question.datum.is_one_surface()
    });
    LevelAnswer {
        level: FloodLevel::rank(usable),
        refused: others
            .into_iter()
            .map(|candidate| Refusal {
                candidate,
                needed: question.datum,
            })
            .collect(),
    }
}
