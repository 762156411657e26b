//! The level that a zone's own record states.

use super::rounding::{ROUNDING_SOURCE, rounding_sd};
use super::water::deciding;
use super::{Candidate, LevelSource, Question};
use crate::hazard::Zone;

/// The levels of the flooded zones of the worst kind that hold the place, in the order of the
/// zones.
pub(super) fn candidates<'a>(question: &'a Question<'_>) -> impl Iterator<Item = Candidate> + 'a {
    deciding(question.zones).filter_map(|zone| candidate(question, zone))
}

fn candidate(question: &Question<'_>, zone: &Zone) -> Option<Candidate> {
    let elevation = zone.level.filter(|_| zone.class.is_inside())?;
    let chance = Some(zone.annual_chance).filter(|chance| chance.same_event(question.event))?;
    let words = |write: &dyn Fn() -> String| {
        if question.words {
            write()
        } else {
            String::new()
        }
    };
    Some(Candidate {
        source: LevelSource::ZoneStatic,
        elevation,
        sd: zone.level_unit.map(|unit| rounding_sd(elevation, unit)),
        chance,
        how: words(&|| format!("level of zone {}; {ROUNDING_SOURCE}", zone.title())),
        reference: words(&|| zone.record().to_string()),
    })
}
