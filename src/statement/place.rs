//! Where a value was written.

use std::fmt;
use std::sync::Arc;

/// The place that a message points to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// A line of a text file, counted from 1.
    Line {
        /// The file as the user named it.
        file: Arc<str>,
        /// The line.
        line: usize,
    },
    /// An option of the command line as it was typed, or a file as a whole.
    Option(Arc<str>),
}

impl fmt::Display for Place {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line { file, line } => write!(formatter, "{file}, line {line}"),
            Self::Option(name) => formatter.write_str(name),
        }
    }
}

/// The line, counted from 1, that holds the byte at `offset`.
#[must_use]
pub fn line_of(text: &[u8], offset: usize) -> usize {
    let before = text.get(..offset).unwrap_or(text);
    1 + memchr::memchr_iter(b'\n', before).count()
}
