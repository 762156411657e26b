//! One stated value.

use std::borrow::Cow;

use super::{Choice, Place, StatementError};
use crate::quantity::{LengthUnit, QuantityError, UnknownDatum, UnknownLengthUnit, VerticalDatum};

/// A text with the field it was given for and the place where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stated<'text> {
    field: Cow<'static, str>,
    text: Cow<'text, str>,
    place: Place,
}

/// Why a text cannot be read, and what would have been accepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// What is wrong with the text.
    pub problem: String,
    /// What would have been accepted.
    pub accepted: String,
}

impl<'text> Stated<'text> {
    /// A text stated for `field` at `place`.
    pub fn new(
        field: impl Into<Cow<'static, str>>,
        text: impl Into<Cow<'text, str>>,
        place: Place,
    ) -> Self {
        Self {
            field: field.into(),
            text: text.into(),
            place,
        }
    }

    /// The same with its own copy of the text, to be kept longer than the file is.
    #[must_use]
    pub fn to_owned_text(&self) -> Stated<'static> {
        Stated::new(
            self.field.clone(),
            self.text.clone().into_owned(),
            self.place.clone(),
        )
    }

    /// Another text in its place: a part of it, or one that keeps something to itself.
    #[must_use]
    pub fn with_text<'other>(&self, text: impl Into<Cow<'other, str>>) -> Stated<'other> {
        Stated::new(self.field.clone(), text, self.place.clone())
    }

    /// The text as it was written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Where it stands.
    #[must_use]
    pub const fn place(&self) -> &Place {
        &self.place
    }

    /// Reads the text with `parse`.
    ///
    /// # Errors
    /// [`StatementError`] with what `parse` says of the text.
    pub fn read<Value, Problem: Into<Unreadable>>(
        &self,
        parse: impl FnOnce(&str) -> Result<Value, Problem>,
    ) -> Result<Value, StatementError> {
        parse(&self.text).map_err(|problem| {
            let Unreadable { problem, accepted } = problem.into();
            self.refuse(problem, accepted)
        })
    }

    /// Picks the choice whose word the text is; case and outer spaces do not matter.
    ///
    /// # Errors
    /// [`StatementError`] listing the words.
    pub fn choose<Picked: Choice>(&self) -> Result<Picked, StatementError> {
        let text = self.text.trim();
        Picked::CHOICES
            .iter()
            .find(|(word, _)| word.eq_ignore_ascii_case(text))
            .map(|(_, choice)| *choice)
            .ok_or_else(|| {
                let words: Vec<&str> = Picked::CHOICES.iter().map(|(word, _)| *word).collect();
                self.refuse("it is not one of the choices", words.join(", "))
            })
    }

    /// A name: any text that is not blank.
    ///
    /// # Errors
    /// [`StatementError`] where it is blank.
    pub fn name(&self) -> Result<String, StatementError> {
        let name = self.text.trim();
        if name.is_empty() {
            return Err(self.refuse("it is blank", "a text"));
        }
        if name.chars().any(char::is_control) {
            return Err(self.refuse(
                "it has a line break or another control character",
                "a text on one line",
            ));
        }
        Ok(name.to_owned())
    }

    /// An error about this value.
    pub fn refuse(
        &self,
        problem: impl Into<String>,
        accepted: impl Into<String>,
    ) -> StatementError {
        StatementError {
            place: self.place.clone(),
            field: self.field.clone().into_owned(),
            value: Some(self.text.clone().into_owned()),
            problem: problem.into(),
            accepted: accepted.into(),
        }
    }
}

impl From<QuantityError> for Unreadable {
    fn from(error: QuantityError) -> Self {
        Self {
            problem: error.problem().to_owned(),
            accepted: error.accepted().to_owned(),
        }
    }
}

impl From<UnknownDatum> for Unreadable {
    fn from(_: UnknownDatum) -> Self {
        Self {
            problem: "it is not a known vertical datum".to_owned(),
            accepted: VerticalDatum::ACCEPTED.to_owned(),
        }
    }
}

impl From<UnknownLengthUnit> for Unreadable {
    fn from(_: UnknownLengthUnit) -> Self {
        Self {
            problem: "it is not a unit of length".to_owned(),
            accepted: LengthUnit::ACCEPTED.to_owned(),
        }
    }
}
