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

/// Asks every layer of lines, where lines may speak for the place.
pub(super) fn ask(question: &Question<'_>, answers: &mut Answers) {
    if !question.lines_may_speak() {
        return;
    }
    for map in &question.maps.lines {
        let why = match candidate_from_lines(map, question.location) {
            Ok(Some(candidate)) => {
                answers.candidates.push(candidate);
                continue;
            }
            Ok(None) => "no line with a level is near".to_owned(),
            Err(refusal) => refusal.to_string(),
        };
        answers.silent.push(Silence {
            source: source(map),
            why,
        });
    }
}
