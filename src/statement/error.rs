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

/// More characters than this of a value do not help to find it.
const QUOTED: usize = 100;

fn quoted(value: Option<&str>) -> String {
    let Some(text) = value else {
        return String::new();
    };
    match text.char_indices().nth(QUOTED) {
        Some((end, _)) => format!(" {:?}…", &text[..end]),
        None => format!(" {text:?}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_value_is_cut_between_characters() {
        assert_eq!(quoted(Some("8.1 ft")), " \"8.1 ft\"");
        let endless = "\u{e9}".repeat(5000);
        let message = quoted(Some(&endless));
        assert_eq!(
            message.chars().filter(|each| *each == '\u{e9}').count(),
            QUOTED
        );
        assert!(message.ends_with("\"…"), "{message}");
    }
}
