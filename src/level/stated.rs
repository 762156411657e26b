//! A level that the user states from a flood study.

use super::{Candidate, LevelSource, Question};
use crate::design::FloodEvent;

/// The stated level of the assessed event, if there is one.
pub(super) fn candidate(question: &Question<'_>) -> Option<Candidate> {
    let level = question
        .stated
        .iter()
        .find(|level| level.event.same_event(FloodEvent::Chance(question.event)))?;
    Some(Candidate {
        source: LevelSource::Stated,
        elevation: level.elevation,
        sd: level.sd,
        chance: question.event,
        how: "stated in the site file".to_owned(),
        reference: level.source.clone(),
    })
}
