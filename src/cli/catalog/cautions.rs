//! Cautions by their codes.

use sillmark::statement::StatementError;
use sillmark::verdict::CautionTexts;

use super::list::List;

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    for (code, text, citation) in CautionTexts::shipped()?.all() {
        list.entry(code, text);
        list.source(citation);
    }
    Ok(list.0)
}
