//! A statement that cannot be used.

use super::Place;

/// A value that cannot be used: where it stands, what it says, and what would be accepted.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{place}: {field}{}: {problem}; accepted: {accepted}", quoted(.value.as_deref()))]
pub struct StatementError {
    /// Where it was written.
    pub place: Place,
    /// The field, by the name the user writes.
    pub field: String,
    /// The text as it was written; `None` where it is missing.
    pub value: Option<String>,
    /// What is wrong.
    pub problem: String,
    /// What would have been accepted.
    pub accepted: String,
}

fn quoted(value: Option<&str>) -> String {
    value.map(|text| format!(" {text:?}")).unwrap_or_default()
}
