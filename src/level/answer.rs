//! Asking all sources.

use super::{
    Candidate, FloodLevel, LevelSource, depth_over_grade, level_lines, stated, zone_static,
};
use crate::crs::{DatumError, Datums};
use crate::design::StatedLevel;
use crate::hazard::{LevelLineMap, Zone, ZoneClass};
use crate::quantity::{AnnualChance, Elevation, Length, VerticalDatum};
use crate::site::Location;

/// What is asked: the level of an event at a place, on a datum.
#[derive(Clone, Copy)]
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
    /// Whether there was a zone layer to look the place up in.
    pub zones_given: bool,
    /// Cross-sections and flood-level lines.
    pub level_lines: &'a [LevelLineMap],
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

    /// Whether the lines of a river may speak for the place: they do where the zone is flooded
    /// by it, or where nobody looked the zone up. They do not reach behind a levee, up a beach
    /// or over ground that the map calls outside or unknown.
    pub(super) fn lines_may_speak(&self) -> bool {
        match self.zones.first() {
            Some(worst) => matches!(
                worst.class,
                ZoneClass::Detailed | ZoneClass::Floodway | ZoneClass::Approximate
            ),
            None => !self.zones_given,
        }
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
    /// Sources that were asked and do not tell the level there.
    pub silent: Vec<Silence>,
}

/// A source that was asked and has no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Silence {
    /// The source.
    pub source: LevelSource,
    /// Why.
    pub why: String,
}

/// What a source answers: its levels, or why it has none.
pub(super) type Answers = Vec<Result<Candidate, Silence>>;

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
    let mut answers: Answers = stated::candidate(question).map(Ok).into_iter().collect();
    answers.extend(zone_static::candidates(question).map(Ok));
    answers.extend(level_lines::answers(question));
    answers.extend(depth_over_grade::candidate(question).map(Ok));
    let mut answer = LevelAnswer::default();
    let mut usable = Vec::new();
    for found in answers {
        match found.map(|candidate| question.on_datum(candidate)) {
            Ok(Ok(candidate)) => usable.push(candidate),
            Ok(Err(refusal)) => answer.refused.push(refusal),
            Err(silence) => answer.silent.push(silence),
        }
    }
    answer.level = FloodLevel::rank(usable);
    answer
}
