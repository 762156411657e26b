//! Flood-zone schemas.

use sillmark::hazard::Schema;
use sillmark::statement::StatementError;

use super::list::List;

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    for schema in Schema::shipped()? {
        list.entry(&schema.name, &schema.title);
        list.detail(&format!("source: {}", schema.source));
    }
    Ok(list.0)
}
