//! Cross-sections and flood-level lines as a source.

use super::answer::{Answers, Question, Silence};
use super::bracket::{LineRefusal, bracket};
use super::{Candidate, LevelSource};
use crate::hazard::{LevelLineMap, LineKind};
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
    let Some(found) = bracket(map, location)? else {
        return Ok(None);
    };
    Ok(Some(Candidate {
        source: source(map),
        elevation: found.elevation,
        sd: Some(found.sd),
        chance: found.annual_chance,
        how: found.how(),
        reference: found.reference(),
    }))
}

fn source(map: &LevelLineMap) -> LevelSource {
    match map.kind() {
        LineKind::CrossSections => LevelSource::CrossSections,
        LineKind::LevelLines => LevelSource::LevelLines,
    }
}

/// What every layer of lines says of the assessed event, where lines may speak for the place.
pub(super) fn answers(question: &Question<'_>) -> Answers {
    if !question.lines_may_speak() {
        return Answers::new();
    }
    let silence = |map, why: String| {
        Some(Err(Silence {
            source: source(map),
            why,
        }))
    };
    question
        .level_lines
        .iter()
        .filter_map(|map| match candidate_from_lines(map, question.location) {
            Ok(Some(candidate)) if candidate.chance.same_event(question.event) => {
                Some(Ok(candidate))
            }
            Ok(Some(candidate)) => silence(
                map,
                format!(
                    "its lines are of the {} annual chance flood",
                    candidate.chance
                ),
            ),
            Ok(None) => silence(map, "no line with a level is near".to_owned()),
            Err(refusal) => silence(map, refusal.to_string()),
        })
        .collect()
}
