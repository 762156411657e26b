//! The floods that a level can belong to.

use std::fmt;

use crate::quantity::{
    AnnualChance, Elevation, Length, parse_annual_chance, parse_elevation, parse_length,
};
use crate::statement::{Stated, StatementError, Table};

/// Which flood a level is the level of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FloodEvent {
    /// The flood that is reached or passed with this chance in any one year.
    Chance(AnnualChance),
    /// The highest flood on record.
    Record,
    /// The level that the community has adopted for design.
    Community,
}

/// A flood level that the user states, with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct StatedLevel {
    /// Which flood.
    pub event: FloodEvent,
    /// Its level.
    pub elevation: Elevation,
    /// Standard deviation of the level, where the user states one.
    pub sd: Option<Length>,
    /// Who says so: study, profile, letter.
    pub source: String,
}

impl FloodEvent {
    const ACCEPTED: &'static str =
        "an annual chance such as \"1%\" or \"0.2%\", \"record\" or \"community\"";

    /// Reads `1%`, `record` or `community`.
    pub(super) fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        match stated.text().trim() {
            "record" => Ok(Self::Record),
            "community" => Ok(Self::Community),
            text => parse_annual_chance(text)
                .map(Self::Chance)
                .map_err(|error| stated.refuse(error.problem(), Self::ACCEPTED)),
        }
    }

    /// Whether both are the same flood.
    #[must_use]
    pub fn same_event(self, other: Self) -> bool {
        match (self, other) {
            (Self::Chance(one), Self::Chance(two)) => one.same_event(two),
            _ => self == other,
        }
    }
}

impl StatedLevel {
    /// Reads a `[[flood_level]]` table.
    ///
    /// # Errors
    /// [`StatementError`] naming the field at fault.
    pub fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["event", "level", "source", "standard_deviation"])?;
        Ok(Self {
            event: FloodEvent::read(&table.required("event", FloodEvent::ACCEPTED)?)?,
            elevation: table
                .required("level", "a height with unit and datum")?
                .read(parse_elevation)?,
            sd: table
                .optional("standard_deviation")?
                .map(|stated| stated.read(parse_length))
                .transpose()?,
            source: table
                .required("source", "the study, profile or letter that states it")?
                .name()?,
        })
    }
}

impl fmt::Display for FloodEvent {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Chance(chance) => write!(formatter, "{chance} annual chance flood"),
            Self::Record => formatter.write_str("flood of record"),
            Self::Community => formatter.write_str("level adopted by the community"),
        }
    }
}
