//! Metals of planks and posts.

use sillmark::barrier;
use sillmark::statement::StatementError;

use super::list::{List, UNITS};

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    for material in barrier::materials()? {
        list.entry(&material.id, &material.name);
        list.detail(&format!(
            "yield {}, ultimate {}, modulus {}",
            UNITS.stress(material.yield_strength),
            UNITS.stress(material.ultimate_strength),
            UNITS.stress(material.modulus),
        ));
        if let Some(welded) = material.welded {
            list.detail(&format!(
                "beside a weld: yield {}, ultimate {}",
                UNITS.stress(welded.yield_strength),
                UNITS.stress(welded.ultimate_strength),
            ));
        }
        list.source(&material.citation);
    }
    Ok(list.0)
}
