//! Cross-sections and flood-level lines as a source.

use super::bracket::{Bracketed, LineRefusal, Position, bracket};
use super::water::{lines_may_speak, map_says_outside};
use super::{Candidate, LevelSource, MapLevels, MapQuestion, Silence};
use crate::hazard::LevelLineMap;
use crate::quantity::{Length, unit::foot};
use crate::site::Location;

/// The level at a place from a layer of cross-sections or flood-level lines; `None` where no
/// line is near enough to say anything ([`LevelLineMap::SEARCH_LIMIT_METRES`]).
///
/// The candidate stands on the lines' datum and belongs to their event.
///
/// # Errors
/// [`LineRefusal`] with the reason why the lines do not tell the level there.
pub fn candidate_from_lines(
    map: &LevelLineMap,
    location: Location,
) -> Result<Option<Candidate>, LineRefusal> {
    let found = bracket(map, location)?;
    Ok(found.map(|found| candidate(map, &found)))
}

fn candidate(map: &LevelLineMap, found: &Bracketed<'_>) -> Candidate {
    Candidate {
        source: LevelSource::of_lines(map.kind()),
        elevation: found.elevation,
        sd: Some(found.sd),
        chance: found.annual_chance,
        how: found.how(),
        reference: found.reference(),
    }
}

/// Asks every layer of lines, where lines may speak for the place.
pub(super) fn ask(question: &MapQuestion<'_>, levels: &mut MapLevels) {
    if !lines_may_speak(question.zones, question.zone_maps) {
        return;
    }
    for map in &question.maps.lines {
        let why = match candidate_from_lines(map, question.location) {
            Ok(Some(candidate)) => {
                levels.candidates.push(candidate);
                continue;
            }
            Ok(None) => "no line with a level is near".to_owned(),
            Err(refusal) => refusal.to_string(),
        };
        levels.silent.push(Silence {
            source: LevelSource::of_lines(map.kind()),
            why,
        });
    }
}

/// A line farther away than this says nothing against a map that puts the place outside the
/// flood: a judgement, no source.
const BESIDE_FEET: f64 = 1000.0;

/// The levels of the river beside a place that the map puts outside the flood: between two
/// lines, the nearer of them not far. They do not decide, but a sill below them is a
/// contradiction that somebody has to resolve.
pub(super) fn beside(question: &MapQuestion<'_>, levels: &mut MapLevels) {
    if !map_says_outside(question.zones) {
        return;
    }
    let limit = Length::new::<foot>(BESIDE_FEET);
    let near = question.maps.lines.iter().filter_map(|map| {
        let found = bracket(map, question.location).ok().flatten()?;
        let nearest = match &found.position {
            Position::OnLine(line) => line.distance,
            Position::Between {
                upstream,
                downstream,
            } => upstream.distance.min(downstream.distance),
            Position::AboveLast { .. } | Position::BelowLast { .. } => return None,
        };
        Some(candidate(map, &found))
            .filter(|candidate| nearest <= limit && candidate.chance.same_event(question.event))
    });
    levels.beside.extend(near);
}
