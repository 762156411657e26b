//! The names of a table's columns.

use std::path::Path;
use std::sync::Arc;

use super::TableError;

/// Names that tell the columns apart, trimmed.
///
/// # Errors
/// [`TableError::Refused`] naming the columns without a name, or the names that occur twice.
pub(super) fn column_names<'name>(
    path: &Path,
    names: impl Iterator<Item = &'name str>,
) -> Result<Arc<[String]>, TableError> {
    let names: Vec<String> = names.map(|name| name.trim().to_owned()).collect();
    let refused =
        |found: String, accepted: &str| Err(TableError::refused(path, "header", found, accepted));
    let unnamed: Vec<String> = names
        .iter()
        .enumerate()
        .filter(|(_, name)| name.is_empty())
        .map(|(index, _)| (index + 1).to_string())
        .collect();
    if !unnamed.is_empty() {
        let found = format!("column {} has no name", unnamed.join(", "));
        return refused(found, "a name for every column");
    }
    let mut sorted: Vec<&String> = names.iter().collect();
    sorted.sort_unstable();
    let mut twice: Vec<String> = sorted
        .windows(2)
        .filter(|pair| pair[0] == pair[1])
        .map(|pair| format!("{:?}", pair[0]))
        .collect();
    twice.dedup();
    if !twice.is_empty() {
        let found = format!("more than one column is named {}", twice.join(", "));
        return refused(found, "every name once");
    }
    Ok(names.into())
}
