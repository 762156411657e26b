//! Standard deviations of terrain, sills, levels and depths.

use sillmark::quantity::UnitSystem;
use sillmark::risk::deviations;
use sillmark::statement::StatementError;

use super::list::List;

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    for deviation in deviations()? {
        let sd = UnitSystem::Si.height(deviation.sd);
        list.entry(
            &deviation.id,
            &format!("{}, standard deviation {sd}", deviation.name),
        );
        list.detail(&format!("covers: {}", deviation.covers));
        list.source(&deviation.citation);
    }
    Ok(list.0)
}
