//! The level that a zone's own record states.

use super::rounding::{ROUNDING_SOURCE, rounding_sd};
use super::{Candidate, LevelSource, Question};
use crate::hazard::Zone;

/// The levels of all flooded zones that hold the place, the highest first where they share a
/// datum: where zones overlap or meet, the worse one counts.
pub(super) fn candidates(question: &Question<'_>) -> Vec<Candidate> {
    let mut found: Vec<Candidate> = question
        .zones
        .iter()
        .filter_map(|zone| candidate(question, zone))
        .collect();
    found.sort_by(|one, two| {
        two.elevation
            .above(one.elevation)
            .map_or(std::cmp::Ordering::Equal, |by| by.value.total_cmp(&0.0))
    });
    found
}

fn candidate(question: &Question<'_>, zone: &Zone) -> Option<Candidate> {
    let elevation = zone.level.filter(|_| zone.class.is_inside())?;
    let chance = Some(zone.annual_chance).filter(|chance| chance.same_event(question.event))?;
    Some(Candidate {
        source: LevelSource::ZoneStatic,
        elevation,
        sd: zone.level_unit.map(|unit| rounding_sd(elevation, unit)),
        chance,
        how: format!("level of zone {}; {ROUNDING_SOURCE}", zone.title()),
        reference: zone.record(),
    })
}
