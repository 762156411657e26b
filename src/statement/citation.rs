//! Where a number of ours comes from, and how sure that is.

use std::fmt;

use super::{Choice, StatementError, Table};

/// The source of a number, with how it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Citation {
    /// Document, edition and clause.
    pub source: String,
    /// Whether the value was seen there.
    pub confidence: Confidence,
}

/// How sure we are that the source says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// The value was seen in the text of the source, or in a text that quotes it.
    Seen,
    /// It follows by calculation from a value that was seen.
    Derived,
    /// It is stated from memory of the source.
    FromMemory,
    /// Common practice for which no source was found.
    CommonPractice,
    /// It was made up for the demonstration.
    Invented,
    /// The user stated it.
    Stated,
}

impl Citation {
    /// Reads `source` and `confidence` of a table of our data files.
    ///
    /// # Errors
    /// [`StatementError`] where either is missing or not understood.
    pub fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        Ok(Self {
            source: table
                .required("source", "document, edition and clause")?
                .name()?,
            confidence: table
                .required("confidence", "how the value was read")?
                .choose()?,
        })
    }
}

impl Choice for Confidence {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("seen", Self::Seen),
        ("derived", Self::Derived),
        ("from memory", Self::FromMemory),
        ("common practice, no source", Self::CommonPractice),
        ("invented", Self::Invented),
        ("stated", Self::Stated),
    ];
}

impl fmt::Display for Confidence {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(self.word())
    }
}

impl fmt::Display for Citation {
    /// The source; where the value was not seen there, how it was come by stands behind it.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.confidence {
            Confidence::Seen | Confidence::Stated => formatter.write_str(&self.source),
            other => write!(formatter, "{} ({other})", self.source),
        }
    }
}
