//! Levels that the user states from a flood study.

use super::{Candidate, LevelSource, Question};
use crate::design::FloodEvent;

/// The stated levels of floods with an annual chance.
pub(super) fn candidates<'a>(question: &'a Question<'_>) -> impl Iterator<Item = Candidate> + 'a {
    question
        .stated
        .iter()
        .filter_map(|level| match level.event {
            FloodEvent::Chance(chance) => Some(Candidate {
                source: LevelSource::Stated,
                elevation: level.elevation,
                sd: level.sd,
                chance,
                how: "stated in the site file".to_owned(),
                reference: level.source.clone(),
            }),
            FloodEvent::Record | FloodEvent::Community => None,
        })
}
