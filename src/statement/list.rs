//! Lists of a TOML table.

use std::borrow::Cow;

use toml::de::DeValue;

use super::document::Spanned;
use super::{Stated, StatementError, Table};

impl<'document> Table<'document, '_> {
    /// The single values listed at `key`, texts and numbers, as they are written; none where
    /// the key is absent.
    ///
    /// # Errors
    /// [`StatementError`] where it is not a list of single values.
    ///
    /// ```
    /// use sillmark::statement::Document;
    /// let document = Document::parse("zones.toml", "none = [-9999.0, \"n/a\"]\n")?;
    /// let none = document.root().values("none")?;
    /// assert_eq!((none[0].text(), none[1].text()), ("-9999.0", "n/a"));
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn values(&self, key: &'static str) -> Result<Vec<Stated<'document>>, StatementError> {
        let Some(value) = self.fields.get(key) else {
            return Ok(Vec::new());
        };
        let accepted = "[a value, another], each a text in quotes or a number";
        let items = value
            .get_ref()
            .as_array()
            .ok_or_else(|| self.wrong_shape(key, value, "it is not a list", accepted))?;
        items
            .iter()
            .map(|item| {
                self.single(key, item).ok_or_else(|| {
                    self.wrong_shape(key, item, "it is not a single value", accepted)
                })
            })
            .collect()
    }

    /// The pairs of single values listed at `key`, such as the corners of an outline, each
    /// with the pair as it is written for messages; none where the key is absent.
    ///
    /// # Errors
    /// [`StatementError`] where it is not a list of lists of two values.
    pub fn pairs(
        &self,
        key: &'static str,
    ) -> Result<Option<Vec<StatedPair<'document>>>, StatementError> {
        let Some(value) = self.fields.get(key) else {
            return Ok(None);
        };
        let accepted = "[[number, number], [number, number], …]";
        let items = value
            .get_ref()
            .as_array()
            .ok_or_else(|| self.wrong_shape(key, value, "it is not a list of pairs", accepted))?;
        items
            .iter()
            .map(|item| {
                let wrong = || self.wrong_shape(key, item, "it is not a pair", accepted);
                let parts = item.get_ref().as_array().ok_or_else(wrong)?;
                let mut parts = parts.iter();
                let (Some(first), Some(second), None) = (parts.next(), parts.next(), parts.next())
                else {
                    return Err(wrong());
                };
                Ok(StatedPair {
                    first: self.single(key, first).ok_or_else(wrong)?,
                    second: self.single(key, second).ok_or_else(wrong)?,
                    whole: self.as_written(key, item),
                })
            })
            .collect::<Result<_, _>>()
            .map(Some)
    }

    /// The value of `key` whatever its shape, as it is written, for a message about all of
    /// it; `None` where it is absent.
    #[must_use]
    pub fn whole(&self, key: &'static str) -> Option<Stated<'document>> {
        self.fields
            .get(key)
            .map(|value| self.as_written(key, value))
    }

    fn single(
        &self,
        key: &str,
        item: &'document Spanned<DeValue<'_>>,
    ) -> Option<Stated<'document>> {
        let text: Cow<'document, str> = match item.get_ref() {
            DeValue::String(text) => Cow::Borrowed(text.as_ref()),
            DeValue::Table(_) | DeValue::Array(_) => return None,
            _ => Cow::Borrowed(self.document.written(item.span())),
        };
        let place = self.document.place(item.span().start);
        Some(Stated::new(self.field(key), text, place))
    }

    fn as_written(&self, key: &str, item: &Spanned<DeValue<'_>>) -> Stated<'document> {
        Stated::new(
            self.field(key),
            self.document.written(item.span()),
            self.document.place(item.span().start),
        )
    }
}

/// Two values that stand together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StatedPair<'text> {
    /// The first.
    pub first: Stated<'text>,
    /// The second.
    pub second: Stated<'text>,
    /// Both, as they are written.
    pub whole: Stated<'text>,
}
