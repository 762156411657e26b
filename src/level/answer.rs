//! Step two: the flood level from all sources, on one datum.

use super::curve::{self, Curve};
use super::{
    Candidate, FloodLevel, HighestGrade, LevelSource, MapLevels, Silence, depth_over_grade, stated,
    zone_static,
};
use crate::crs::{DatumError, Datums};
use crate::design::StatedLevel;
use crate::hazard::Zone;
use crate::quantity::{AnnualChance, Length, VerticalDatum};
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
    /// The highest ground against the wall, on the datum that is asked for.
    pub highest_grade: Option<&'a HighestGrade>,
    /// Standard deviation of a zone's depth number.
    pub depth_sd: Option<Length>,
    /// Standard deviations that the user gives for levels, by their source.
    pub level_sd: &'a dyn Fn(LevelSource) -> Option<Length>,
    /// Whether a zone's own level tells in words where it stands. Among a million buildings
    /// nobody reads them.
    pub words: bool,
}

impl Question<'_> {
    /// The candidate on the datum that is asked for.
    fn on_datum(&self, candidate: Candidate) -> Result<Candidate, Box<Refusal>> {
        if candidate.elevation.datum() == self.datum {
            return Ok(candidate);
        }
        match self
            .datums
            .convert(candidate.elevation, self.datum, self.location)
        {
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
            Err(error) => Err(Box::new(Refusal { candidate, error })),
        }
    }
}

/// The level, and what was refused on the way.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LevelAnswer {
    /// The level with its ranked sources; `None` where no source has one.
    pub level: Option<FloodLevel>,
    /// Levels of several floods as one curve, where at least two are known.
    pub curve: Option<Curve>,
    /// The level of the river beside a place that the map puts outside the flood.
    pub beside: Option<Box<Candidate>>,
    /// Levels that could not be put on the datum that was asked for.
    pub refused: Vec<Refusal>,
    /// Sources that were asked and do not tell the level there.
    pub silent: Vec<Silence>,
    /// What a reader has to know of the levels.
    pub remarks: Vec<String>,
}

/// A level that stands on another datum and cannot be put on the one that is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The level.
    pub candidate: Candidate,
    /// Why it cannot be converted.
    pub error: DatumError,
}

/// The flood level from what the maps say, what the user states and what the zones' own
/// records state.
///
/// 1. Each source that has a level gives a candidate; stated levels and rasters do so for
///    every flood.
/// 2. A candidate on another datum than the one asked for is converted; where that cannot be
///    done it is refused, never shifted by nothing.
/// 3. Those of the assessed event are ranked by authority ([`LevelSource`]).
/// 4. Levels of several floods make a curve; where no source has the assessed event and the
///    curve holds it, the level is read from the curve.
#[must_use]
pub fn flood_level(question: &Question<'_>, read: MapLevels) -> LevelAnswer {
    let MapLevels {
        mut candidates,
        mut silent,
        mut remarks,
        beside,
    } = read;
    candidates.extend(stated::candidates(question));
    candidates.extend(zone_static::candidates(question));
    candidates.extend(depth_over_grade::candidate(question));

    let mut refused = Vec::new();
    let usable = candidates.into_iter().filter_map(|mut candidate| {
        candidate.sd = (question.level_sd)(candidate.source).or(candidate.sd);
        match question.on_datum(candidate) {
            Ok(candidate) => return Some(candidate),
            Err(refusal) if refusal.candidate.chance.same_event(question.event) => {
                refused.push(*refusal);
            }
            Err(refusal) => silent.push(Silence {
                source: refusal.candidate.source,
                why: format!(
                    "{} annual chance: {}",
                    refusal.candidate.chance, refusal.error
                ),
            }),
        }
        None
    });
    let usable: Vec<Candidate> = usable.collect();
    let curve = curve::of(&usable, &mut remarks);
    let of_event = usable
        .into_iter()
        .filter(|candidate| candidate.chance.same_event(question.event));
    let level = FloodLevel::rank(of_event.collect()).or_else(|| {
        FloodLevel::rank(
            curve
                .iter()
                .filter_map(|curve| curve.candidate(question.event))
                .collect(),
        )
    });
    let beside = beside
        .into_iter()
        .filter_map(|candidate| question.on_datum(candidate).ok());
    let beside = FloodLevel::rank(beside.collect()).map(|level| Box::new(level.decided));
    LevelAnswer {
        level,
        curve,
        beside,
        refused,
        silent,
        remarks,
    }
}
