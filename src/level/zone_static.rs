//! The level that a zone's own record states.

use super::rounding::{ROUNDING_SOURCE, rounding_sd};
use super::{Candidate, LevelSource, Question};
use crate::hazard::Zone;
use crate::quantity::AnnualChance;

/// The levels of the flooded zones of the worst kind that hold the place, the highest first:
/// where zones overlap or meet, the worse one counts.
pub(super) fn candidates(question: &Question<'_>) -> Vec<Candidate> {
    let mut found: Vec<Candidate> = question
        .deciding_zones()
        .filter_map(|zone| candidate(question, zone))
        .collect();
    // By the bare number, so that the order is total: heights on another datum than the one
    // asked for are taken out later.
    let height = |candidate: &Candidate| candidate.elevation.height().value;
    found.sort_by(|one, two| height(two).total_cmp(&height(one)));
    found
}

fn candidate(question: &Question<'_>, zone: &Zone) -> Option<Candidate> {
    let elevation = zone.level.filter(|_| zone.class.is_inside())?;
    let chance =
        AnnualChance::new(zone.annual_chance).filter(|chance| chance.same_event(question.event))?;
    Some(Candidate {
        source: LevelSource::ZoneStatic,
        elevation,
        sd: zone.level_unit.map(|unit| rounding_sd(elevation, unit)),
        chance,
        how: format!("level of zone {}; {ROUNDING_SOURCE}", zone.title()),
        reference: zone.record(),
    })
}
