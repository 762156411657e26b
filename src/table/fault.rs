//! A record that cannot be read.

use crate::statement::{Place, StatementError};

/// What is wrong with one record. Other records are not touched by it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {field} {value:?}: {problem}; accepted: {accepted}")]
pub struct RecordFault {
    /// The line where the record begins (CSV, the header is line 1), or the number of the
    /// feature or row.
    pub line: u64,
    /// The column, or `record` or `geometry`.
    pub field: String,
    /// The text as far as it can be shown.
    pub value: String,
    /// What is wrong.
    pub problem: String,
    /// What would be accepted.
    pub accepted: String,
}

/// More characters than this of a value do not help to find it.
const SHOWN: usize = 100;

impl RecordFault {
    /// The fault in the one form of an input error, with the name of its file.
    #[must_use]
    pub fn in_file(self, file: &str) -> StatementError {
        StatementError {
            place: Place::Line {
                file: file.into(),
                line: usize::try_from(self.line).unwrap_or(usize::MAX),
            },
            field: self.field,
            value: Some(self.value),
            problem: self.problem,
            accepted: self.accepted,
        }
    }
}

/// The start of a text that may not be UTF-8.
pub(super) fn shown(bytes: &[u8]) -> String {
    // Four bytes are the longest character.
    let start = bytes.get(..SHOWN * 4).unwrap_or(bytes);
    let text = String::from_utf8_lossy(start);
    text.trim_end().chars().take(SHOWN).collect()
}
