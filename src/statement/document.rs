//! A TOML file as a tree of stated values.

use std::borrow::Cow;
use std::ops::Range;
use std::sync::Arc;

use toml::de::{DeTable, DeValue};

use super::choice::Choice;
use super::place::line_of;
use super::{Place, Stated, StatementError, nearest};

pub(super) type Spanned<Value> = toml::Spanned<Value>;

/// A TOML document whose values know their lines.
#[derive(Debug)]
pub struct Document<'text> {
    file: Arc<str>,
    text: &'text str,
    root: Spanned<DeTable<'text>>,
}

/// One table of a [`Document`], such as an `[[opening]]`.
#[derive(Clone, Copy, Debug)]
pub struct Table<'document, 'text> {
    pub(super) document: &'document Document<'text>,
    /// The name in messages: `opening`, empty for the root.
    name: &'document str,
    pub(super) fields: &'document DeTable<'text>,
    start: usize,
}

impl<'text> Document<'text> {
    /// Parses `text`; `file` is the name that messages use.
    ///
    /// # Errors
    /// [`StatementError`] at the line that is not TOML.
    pub fn parse(file: &str, text: &'text str) -> Result<Self, StatementError> {
        let file: Arc<str> = file.into();
        let root = DeTable::parse(text).map_err(|error| {
            let span = error.span().unwrap_or_default();
            let line = line_of(text.as_bytes(), span.start);
            StatementError {
                place: Place::Line {
                    file: Arc::clone(&file),
                    line,
                },
                field: "text".to_owned(),
                value: text
                    .lines()
                    .nth(line - 1)
                    .map(|line| line.trim().to_owned()),
                problem: error.message().trim().replace('\n', ", "),
                accepted: "TOML (toml.io), such as: name = \"a text\"".to_owned(),
            }
        })?;
        Ok(Self { file, text, root })
    }

    /// The whole document.
    #[must_use]
    pub fn root(&self) -> Table<'_, 'text> {
        Table {
            document: self,
            name: "",
            fields: self.root.get_ref(),
            start: 0,
        }
    }

    pub(super) fn place(&self, offset: usize) -> Place {
        Place::Line {
            file: Arc::clone(&self.file),
            line: line_of(self.text.as_bytes(), offset),
        }
    }

    /// The text of a value as it stands in the file.
    pub(super) fn written(&self, span: Range<usize>) -> &'text str {
        self.text.get(span).unwrap_or_default()
    }
}

impl<'document, 'text> Table<'document, 'text> {
    /// Where the table begins.
    #[must_use]
    pub fn place(&self) -> Place {
        self.document.place(self.start)
    }

    /// Refuses fields that are not in `known`: a misspelt field must not be passed over.
    ///
    /// # Errors
    /// [`StatementError`] naming the first unknown field and the known ones.
    pub fn allow(&self, known: &[&str]) -> Result<(), StatementError> {
        let unknown = self
            .fields
            .iter()
            .filter(|(key, _)| !known.contains(&key.get_ref().as_ref()))
            .min_by_key(|(key, _)| key.span().start);
        match unknown {
            None => Ok(()),
            Some((key, _)) => Err(StatementError {
                place: self.document.place(key.span().start),
                field: self.field(key.get_ref()).into_owned(),
                value: None,
                problem: "there is no such field here".to_owned(),
                accepted: known.join(", "),
            }),
        }
    }

    /// As [`allow`](Self::allow); the error also names the known field that may have been meant.
    ///
    /// # Errors
    /// [`StatementError`] naming the first unknown field, the nearest and the known ones.
    pub fn allow_or_nearest(&self, known: &[&str]) -> Result<(), StatementError> {
        self.allow(known).map_err(|error| {
            let field = error.field.rsplit('.').next().unwrap_or_default();
            let problem = match nearest(field, known.iter().copied()) {
                Some(meant) => format!("{}; perhaps {meant} is meant", error.problem),
                None => error.problem,
            };
            StatementError { problem, ..error }
        })
    }

    /// The value of `key`, which has to be there.
    ///
    /// # Errors
    /// [`StatementError`] where it is missing or not a single value.
    pub fn required(
        &self,
        key: &'static str,
        accepted: &str,
    ) -> Result<Stated<'document>, StatementError> {
        self.optional(key)?
            .ok_or_else(|| self.missing(key, accepted))
    }

    /// The choice that `key` names, if it is there.
    ///
    /// # Errors
    /// [`StatementError`] where it is a table or a list, or none of the choices.
    pub fn choice<Picked: Choice>(
        &self,
        key: &'static str,
    ) -> Result<Option<Picked>, StatementError> {
        self.optional(key)?
            .map(|stated| stated.choose())
            .transpose()
    }

    /// The value of `key`, if it is there. Numbers and truth values are taken as they are
    /// written, so that a reader can say what they lack (a unit, say).
    ///
    /// # Errors
    /// [`StatementError`] where it is a table or a list.
    pub fn optional(&self, key: &'static str) -> Result<Option<Stated<'document>>, StatementError> {
        let Some(value) = self.fields.get(key) else {
            return Ok(None);
        };
        let text: Cow<'document, str> = match value.get_ref() {
            DeValue::String(text) => Cow::Borrowed(text.as_ref()),
            DeValue::Table(_) | DeValue::Array(_) => {
                return Err(self.wrong_shape(
                    key,
                    value,
                    "it is not a single value",
                    "a text in quotes",
                ));
            }
            _ => Cow::Borrowed(self.document.written(value.span())),
        };
        Ok(Some(Stated::new(
            self.field(key),
            text,
            self.document.place(value.span().start),
        )))
    }

    /// The table at `key` (`[water]` or `water = { … }`), if it is there.
    ///
    /// # Errors
    /// [`StatementError`] where it is something else.
    pub fn table(&self, key: &'static str) -> Result<Option<Self>, StatementError> {
        let Some(value) = self.fields.get(key) else {
            return Ok(None);
        };
        match value.get_ref() {
            DeValue::Table(table) => Ok(Some(self.inner(key, table, value.span().start))),
            _ => Err(self.wrong_shape(
                key,
                value,
                "it is not a table",
                &format!("[{key}] and its fields below it"),
            )),
        }
    }

    /// Whether `key` holds a table.
    #[must_use]
    pub fn holds_table(&self, key: &str) -> bool {
        self.fields
            .get(key)
            .is_some_and(|value| value.get_ref().is_table())
    }

    /// The tables at `key` (`[[opening]]` …), in the order of the file; none where it is absent.
    ///
    /// # Errors
    /// [`StatementError`] where it is something else.
    pub fn tables(&self, key: &'static str) -> Result<Vec<Self>, StatementError> {
        let Some(value) = self.fields.get(key) else {
            return Ok(Vec::new());
        };
        let wrong = |value: &Spanned<DeValue<'_>>| {
            self.wrong_shape(
                key,
                value,
                "it is not a list of tables",
                &format!("[[{key}]] and its fields below it"),
            )
        };
        let items = value.get_ref().as_array().ok_or_else(|| wrong(value))?;
        items
            .iter()
            .map(|item| match item.get_ref() {
                DeValue::Table(table) => Ok(self.inner(key, table, item.span().start)),
                _ => Err(wrong(item)),
            })
            .collect()
    }

    /// The texts listed at `key`; none where it is absent.
    ///
    /// # Errors
    /// [`StatementError`] where it is not a list of texts.
    pub fn texts(&self, key: &'static str) -> Result<Vec<Stated<'document>>, StatementError> {
        let Some(value) = self.fields.get(key) else {
            return Ok(Vec::new());
        };
        let wrong = |value: &Spanned<DeValue<'_>>| {
            self.wrong_shape(
                key,
                value,
                "it is not a list of texts",
                "[\"a text\", \"another\"]",
            )
        };
        let items = value.get_ref().as_array().ok_or_else(|| wrong(value))?;
        items
            .iter()
            .map(|item| match item.get_ref() {
                DeValue::String(text) => Ok(Stated::new(
                    self.field(key),
                    text.as_ref(),
                    self.document.place(item.span().start),
                )),
                _ => Err(wrong(item)),
            })
            .collect()
    }

    /// An error that says that `key` is missing.
    #[must_use]
    pub fn missing(&self, key: &str, accepted: &str) -> StatementError {
        StatementError {
            place: self.place(),
            field: self.field(key).into_owned(),
            value: None,
            problem: "it is missing".to_owned(),
            accepted: accepted.to_owned(),
        }
    }

    const fn inner(
        &self,
        name: &'static str,
        fields: &'document DeTable<'text>,
        start: usize,
    ) -> Self {
        Self {
            document: self.document,
            name,
            fields,
            start,
        }
    }

    /// `opening.width` in messages, `width` at the root.
    pub(super) fn field(&self, key: &str) -> Cow<'static, str> {
        Cow::Owned(if self.name.is_empty() {
            key.to_owned()
        } else {
            format!("{}.{key}", self.name)
        })
    }

    pub(super) fn wrong_shape(
        &self,
        key: &str,
        value: &Spanned<DeValue<'_>>,
        problem: &str,
        accepted: &str,
    ) -> StatementError {
        StatementError {
            place: self.document.place(value.span().start),
            field: self.field(key).into_owned(),
            value: Some(self.document.written(value.span()).to_owned()),
            problem: problem.to_owned(),
            accepted: accepted.to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILE: &str = "name = \"Lock\"\n\n[[opening]]\nid = \"door\"\nwidth = 36\n\n[[opening]]\nid = \"hatch\"\nwidht = \"2 ft\"\n";

    #[test]
    fn a_value_knows_its_line() {
        let document = Document::parse("lock.toml", FILE).unwrap();
        let openings = document.root().tables("opening").unwrap();
        let width = openings[0].required("width", "a length").unwrap();
        assert_eq!(width.text(), "36");
        assert_eq!(width.place().to_string(), "lock.toml, line 5");
    }

    #[test]
    fn a_misspelt_field_is_named_with_the_known_ones() {
        let document = Document::parse("lock.toml", FILE).unwrap();
        let openings = document.root().tables("opening").unwrap();
        assert_eq!(
            openings[1].allow(&["id", "width"]).unwrap_err().to_string(),
            "lock.toml, line 9: opening.widht: there is no such field here; accepted: id, width"
        );
    }

    #[test]
    fn the_field_that_may_have_been_meant_is_named() {
        let document = Document::parse("lock.toml", FILE).unwrap();
        let openings = document.root().tables("opening").unwrap();
        let said = |known: &[&str]| openings[1].allow_or_nearest(known).unwrap_err().to_string();
        assert_eq!(
            said(&["id", "width"]),
            "lock.toml, line 9: opening.widht: there is no such field here; perhaps width is meant; accepted: id, width"
        );
        assert_eq!(
            said(&["id", "sill"]),
            "lock.toml, line 9: opening.widht: there is no such field here; accepted: id, sill"
        );
    }

    #[test]
    fn a_missing_field_names_its_table() {
        let document = Document::parse("lock.toml", FILE).unwrap();
        let openings = document.root().tables("opening").unwrap();
        assert_eq!(
            openings[1]
                .required("width", "a length")
                .unwrap_err()
                .to_string(),
            "lock.toml, line 7: opening.width: it is missing; accepted: a length"
        );
    }

    #[test]
    fn what_is_not_toml_is_an_error_at_its_line() {
        let error = Document::parse("lock.toml", "name = \"Lock\"\nwidth = = 3\n").unwrap_err();
        assert_eq!(error.place.to_string(), "lock.toml, line 2");
        assert_eq!(error.value.as_deref(), Some("width = = 3"));
    }
}
