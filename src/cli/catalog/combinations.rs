//! Sets of load factors.

use sillmark::load::CombinationSet;
use sillmark::statement::StatementError;

use super::list::List;

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    for set in CombinationSet::shipped()? {
        list.entry(&set.id, &set.name);
        if let Some(note) = &set.note {
            list.detail(&format!("note: {note}"));
        }
        for (zone, factors) in [("coastal", &set.coastal), ("other", &set.other)] {
            if let (Some(factor), Some(citation)) = (factors.allowable, &factors.allowable_citation)
            {
                list.detail(&format!(
                    "{zone} zones, allowable strength: {factor} ({citation})"
                ));
            }
            list.detail(&format!(
                "{zone} zones, factored loads: {} ({})",
                factors.strength, factors.strength_citation
            ));
        }
        list.source(&set.citation);
    }
    Ok(list.0)
}
