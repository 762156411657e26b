//! Limits of walls and flow.

use sillmark::statement::StatementError;
use sillmark::verdict::Limits;

use super::list::{List, UNITS};

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    let limits = Limits::shipped()?;
    for limit in limits.walls() {
        let depth = limit.depth.map_or_else(
            || "none known: an engineer for every depth".to_owned(),
            |depth| UNITS.height(depth),
        );
        list.entry(limit.wall_name(), &depth);
        list.source(&limit.citation);
    }
    list.entry("velocity", &UNITS.velocity(limits.velocity));
    list.source(&limits.velocity_citation);
    Ok(list.0)
}
