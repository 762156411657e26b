//! What common practice asks of a layout, from `data/practice.toml`.

use super::DeflectionLimit;
use super::limit::exceeds;
use crate::quantity::{Length, parse_length, parse_ratio_of_span};
use crate::statement::{Citation, Document, StatementError};

/// When a post stands between the end posts although planks could span the opening, and how
/// far parts may bend.
#[derive(Clone, Debug, PartialEq)]
pub struct Practice {
    /// Barriers wider than this and higher than `higher_than` get an intermediate post.
    pub wider_than: Length,
    /// See `wider_than`.
    pub higher_than: Length,
    /// Where that stands.
    pub citation: Citation,
    /// The greatest deflection where the user states none.
    pub deflection: DeflectionLimit,
}

const PRACTICE: &str = include_str!("../../data/practice.toml");

impl Practice {
    /// The practice that ships with the project.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    ///
    /// ```
    /// use sillmark::barrier::Practice;
    /// use sillmark::quantity::unit::foot;
    /// let practice = Practice::shipped()?;
    /// assert!((practice.wider_than.get::<foot>() - 10.0).abs() < 1e-12);
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn shipped() -> Result<Self, StatementError> {
        let document = Document::parse("data/practice.toml", PRACTICE)?;
        let root = document.root();
        root.allow(&["intermediate_post", "deflection"])?;
        let table = |key| root.table(key)?.ok_or_else(|| root.missing(key, "a table"));
        let post = table("intermediate_post")?;
        post.allow(&["wider_than", "higher_than", "source", "confidence"])?;
        let deflection = table("deflection")?;
        deflection.allow(&["limit", "source", "confidence"])?;
        let limit = deflection
            .required("limit", "a part of the span, such as \"L/120\"")?
            .read(parse_ratio_of_span)?;
        Ok(Self {
            wider_than: post.required("wider_than", "a width")?.read(parse_length)?,
            higher_than: post
                .required("higher_than", "a height")?
                .read(parse_length)?,
            citation: Citation::read(&post)?,
            deflection: DeflectionLimit {
                parts: 1.0 / limit.value,
                citation: Citation::read(&deflection)?,
            },
        })
    }

    /// Whether practice asks for a post between the end posts of a leg.
    #[must_use]
    pub fn asks_for_a_post(&self, leg: Length, height: Length) -> bool {
        exceeds(leg, self.wider_than) && exceeds(height, self.higher_than)
    }
}
