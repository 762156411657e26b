//! Services that agencies have documented.

use sillmark::service::known_services;
use sillmark::statement::StatementError;

use super::list::List;

pub(super) fn list() -> Result<String, StatementError> {
    let mut list = List::default();
    for service in known_services()? {
        list.entry(&service.id, &service.title);
        // Not as a paragraph: an address is copied as one word.
        list.line(&format!("{} \"{}\"", service.option, service.address));
        if let Some(schema) = service.schema {
            list.detail(&format!("--zones-schema {schema}"));
        }
        if let Some(stated) = service.stated {
            list.detail(&format!("state beside it: {stated}"));
        }
        list.detail(&format!("kind: {}", service.kind.title()));
        list.detail(&format!("licence: {}", service.licence));
        list.detail(&format!(
            "source: {}; address from public documentation read on {}, not checked from here",
            service.source, service.dated
        ));
    }
    Ok(list.0)
}
