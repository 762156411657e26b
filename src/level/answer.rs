//! Asking all sources.

use super::{Candidate, FloodLevel, depth_over_grade, stated, zone_static};
use crate::crs::{DatumError, Datums};
use crate::design::StatedLevel;
use crate::hazard::{Zone, ZoneClass};
use crate::quantity::{AnnualChance, Elevation, Length, VerticalDatum};
use crate::site::Location;

/// What is asked: the level of an event at a place, on a datum.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// The place.
    pub location: Location,
    /// The event.
    pub event: AnnualChance,
    /// The datum that the answer has to stand on.
    pub datum: VerticalDatum,
    /// What puts heights on that datum.
    pub datums: &'a Datums,
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

    /// The candidate on the datum that is asked for.
    fn on_datum(&self, candidate: Candidate) -> Result<Candidate, Refusal> {
        match self
            .datums
            .convert(candidate.elevation, self.datum, self.location)
        {
            Ok(conversion) if conversion.shift == Length::default() => Ok(candidate),
            Ok(conversion) => Ok(Candidate {
                elevation: conversion.elevation,
                sd: candidate
                    .sd
                    .zip(conversion.standard_deviation)
                    .map(|(own, shift)| own.hypot(shift)),
                how: format!(
                    "{}; converted from {} {}",
                    candidate.how,
                    candidate.elevation.datum(),
                    conversion.how
                ),
                reference: format!("{}; {}", candidate.reference, conversion.reference),
                ..candidate
            }),
            Err(error) => Err(Refusal { candidate, error }),
        }
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
    /// Levels that could not be put on the datum that was asked for.
    pub refused: Vec<Refusal>,
}

/// A level that stands on another datum and cannot be put on the one that is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The level.
    pub candidate: Candidate,
    /// Why it cannot be converted.
    pub error: DatumError,
}

/// Asks every source for the flood level.
///
/// 1. Each source that has a level of the event gives a candidate.
/// 2. A candidate on another datum than the one asked for is converted; where that cannot be
///    done it is refused, never shifted by nothing.
/// 3. The rest is ranked by authority ([`super::LevelSource`]).
#[must_use]
pub fn flood_level(question: &Question<'_>) -> LevelAnswer {
    let found = stated::candidate(question)
        .into_iter()
        .chain(zone_static::candidates(question))
        .chain(depth_over_grade::candidate(question));
    let mut refused = Vec::new();
    let mut usable = Vec::new();
    for candidate in found {
        match question.on_datum(candidate) {
            Ok(candidate) => usable.push(candidate),
            Err(refusal) => refused.push(refusal),
        }
    }
    LevelAnswer {
        level: FloodLevel::rank(usable),
        refused,
    }
}
