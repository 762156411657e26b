//! One number and one unit: the mechanism behind every measure but lengths and elevations.

use std::marker::PhantomData;

use uom::si::{Dimension, Quantity, SI};

use super::error::{Expected, QuantityError};
use super::scan::number_and_rest;

/// A unit by its spellings, the one to offer first, and its size in coherent SI units.
pub(super) type Unit = (&'static [&'static str], f64);

/// What a text of one kind may say.
pub(super) struct Measure {
    /// With its article: `a force`.
    pub noun: &'static str,
    /// Without: `force`.
    pub of: &'static str,
    /// Examples for a message.
    pub accepted: &'static str,
    pub units: &'static [Unit],
    /// Least and greatest value that is taken for one, in coherent SI units.
    pub least: f64,
    pub greatest: f64,
    /// What is wrong with a value outside them.
    pub absurd: &'static str,
}

impl Measure {
    /// Reads `text` as a quantity of the dimension that the table's SI units are of.
    pub(super) fn read<Of: Dimension + ?Sized>(
        &self,
        text: &str,
    ) -> Result<Quantity<Of, SI<f64>, f64>, QuantityError> {
        let fail = |problem: String| QuantityError::new(text, self.expected(), problem);
        let (number, unit) = number_and_rest(text).map_err(fail)?;
        let value = number * self.size_of(unit).map_err(fail)?;
        if value < 0.0 && self.least >= 0.0 {
            return Err(fail("it is negative".to_owned()));
        }
        // Written so that what is no number at all does not pass either.
        if !(self.least..=self.greatest).contains(&value) {
            return Err(fail(self.absurd.to_owned()));
        }
        Ok(Quantity {
            dimension: PhantomData,
            units: PhantomData,
            value,
        })
    }

    const fn expected(&self) -> Expected {
        Expected::Measure {
            noun: self.noun,
            accepted: self.accepted,
        }
    }

    fn size_of(&self, unit: &str) -> Result<f64, String> {
        let key = key_of(unit);
        if key.is_empty() {
            return Err("it has no unit".to_owned());
        }
        self.units
            .iter()
            .find(|(names, _)| names.iter().any(|name| key_of(name) == key))
            .map(|(_, size)| *size)
            .ok_or_else(|| {
                let known: Vec<&str> = self.units.iter().map(|(names, _)| names[0]).collect();
                format!(
                    "{unit:?} is not a unit of {} (those are {})",
                    self.of,
                    known.join(", ")
                )
            })
    }
}

/// Case, spaces and the way a power is written do not matter: `in²`, `in^2` and `IN 2`.
fn key_of(unit: &str) -> String {
    unit.chars()
        .filter_map(|character| match character {
            ' ' | '^' | '.' | '\u{b7}' => None,
            '²' => Some('2'),
            '³' => Some('3'),
            '⁴' => Some('4'),
            other => Some(other.to_ascii_lowercase()),
        })
        .collect()
}
