//! An attribute of a feature, whatever type the file stores it in.

use std::fmt;

/// The value of one attribute.
#[derive(Clone, Debug, PartialEq)]
pub enum AttributeValue {
    /// Null, or not set in this feature.
    Missing,
    /// A number.
    Number(f64),
    /// Text, and everything that is not a number, as text.
    Text(String),
}

impl AttributeValue {
    /// The text, trimmed; numbers as they print. `None` where missing.
    #[must_use]
    pub fn text(&self) -> Option<String> {
        match self {
            Self::Missing => None,
            Self::Number(number) => Some(number.to_string()),
            Self::Text(text) => Some(text.trim().to_owned()),
        }
    }
}

impl fmt::Display for AttributeValue {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing => formatter.write_str("null"),
            Self::Number(number) => number.fmt(formatter),
            Self::Text(text) => write!(formatter, "{text:?}"),
        }
    }
}

/// Appends the shortest text that reads as the same number; nothing for one that is none.
pub(crate) fn append_number(text: &mut String, number: f64) {
    use fmt::Write;
    // Writing to memory does not fail.
    let _ = match number.abs() {
        _ if number.is_nan() => Ok(()),
        size if size == 0.0 || (1e-5..1e16).contains(&size) => write!(text, "{number}"),
        _ => write!(text, "{number:e}"),
    };
}
