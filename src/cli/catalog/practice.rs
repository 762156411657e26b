//! What common practice asks of a layout.

use sillmark::barrier::Practice;
use sillmark::statement::StatementError;

use super::list::{List, UNITS};

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    let practice = Practice::shipped()?;
    list.entry(
        "intermediate post",
        &format!(
            "where a barrier is wider than {} and higher than {}",
            UNITS.height(practice.wider_than),
            UNITS.height(practice.higher_than)
        ),
    );
    list.source(&practice.citation);
    list.entry(
        "deflection",
        &format!(
            "no more than L/{:.0} where none is stated",
            practice.deflection.parts
        ),
    );
    list.source(&practice.deflection.citation);
    Ok(list.0)
}
