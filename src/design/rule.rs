//! A freeboard rule.

use std::fmt;

use super::{FloodEvent, Occupancy};
use crate::quantity::{Length, parse_length};
use crate::statement::{Citation, Confidence, Stated, StatementError, Table};

/// How a design level follows from flood levels: the highest of its terms.
#[derive(Clone, Debug, PartialEq)]
pub struct Rule {
    /// Name on the command line, without spaces.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// When it governs.
    pub applies: String,
    /// What to know before using it.
    pub note: Option<String>,
    /// Clause and edition, and how sure we are.
    pub citation: Citation,
    /// At least one.
    pub terms: Vec<Term>,
}

/// One term of a [`Rule`]: a level and what is added to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Term {
    /// The level it starts from.
    pub base: Base,
    /// What it adds.
    pub add: Length,
    /// The uses it holds for; empty for all.
    pub occupancies: Vec<Occupancy>,
    /// Whether the rule can be answered where this term's level is not known. A level that a
    /// community may or may not have adopted is optional; a level that the rule always
    /// compares with is not.
    pub optional: bool,
}

/// The level that a term starts from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Base {
    /// The flood level of the assessed event.
    FloodLevel,
    /// The level of another event, which the user has to state.
    Event(FloodEvent),
}

impl Rule {
    /// Reads a rule of our own catalogue.
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&[
            "id",
            "name",
            "applies",
            "note",
            "source",
            "confidence",
            "term",
        ])?;
        Ok(Self {
            id: table.required("id", "a short name")?.name()?,
            name: table.required("name", "a name for people")?.name()?,
            applies: table.required("applies", "when the rule governs")?.name()?,
            note: table
                .optional("note")?
                .map(|stated| stated.name())
                .transpose()?,
            citation: Citation::read(table)?,
            terms: terms(table)?,
        })
    }

    /// Reads the `[rule]` of a site file: a rule that the user writes.
    ///
    /// # Errors
    /// [`StatementError`] naming the field at fault.
    pub fn read_stated(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["id", "name", "note", "source", "term"])?;
        let name = table.required("name", "a name for people")?.name()?;
        Ok(Self {
            id: table
                .optional("id")?
                .map(|stated| stated.name())
                .transpose()?
                .unwrap_or_else(|| "stated".to_owned()),
            name,
            applies: "as the user states".to_owned(),
            note: table
                .optional("note")?
                .map(|stated| stated.name())
                .transpose()?,
            citation: Citation {
                source: table
                    .required("source", "the ordinance, clause and date")?
                    .name()?,
                confidence: Confidence::Stated,
            },
            terms: terms(table)?,
        })
    }
}

fn terms(table: &Table<'_, '_>) -> Result<Vec<Term>, StatementError> {
    let terms = table
        .tables("term")?
        .iter()
        .map(Term::read)
        .collect::<Result<Vec<_>, _>>()?;
    if terms.is_empty() {
        return Err(table.missing(
            "term",
            "[[rule.term]] with to = \"flood level\" and add = \"1 ft\"",
        ));
    }
    Ok(terms)
}

impl Term {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["to", "add", "occupancy", "optional"])?;
        Ok(Self {
            base: Base::read(&table.required("to", Base::ACCEPTED)?)?,
            add: table
                .required("add", "a length such as \"1 ft\" or \"300 mm\"")?
                .read(parse_length)?,
            occupancies: table
                .texts("occupancy")?
                .iter()
                .map(Stated::choose)
                .collect::<Result<_, _>>()?,
            optional: match table.optional("optional")? {
                Some(stated) => stated.choose()?,
                None => false,
            },
        })
    }

    /// Whether the term holds for a use; `None` where that depends on a use nobody stated.
    pub(super) fn holds_for(&self, occupancy: Option<Occupancy>) -> Option<bool> {
        if self.occupancies.is_empty() {
            Some(true)
        } else {
            occupancy.map(|occupancy| self.occupancies.contains(&occupancy))
        }
    }
}

impl Base {
    const ACCEPTED: &'static str = "\"flood level\" (of the assessed event), an annual chance such as \"0.2%\", \"record\" or \"community\"";

    fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        if stated.text().trim() == "flood level" {
            return Ok(Self::FloodLevel);
        }
        FloodEvent::read(stated)
            .map(Self::Event)
            .map_err(|error| stated.refuse(error.problem, Self::ACCEPTED))
    }
}

impl fmt::Display for Base {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::FloodLevel => formatter.write_str("flood level"),
            Self::Event(event) => event.fmt(formatter),
        }
    }
}
