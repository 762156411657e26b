//! Fields that need not be there.

use std::ops::RangeInclusive;

use uom::si::{Dimension, Quantity, SI};

use crate::quantity::QuantityError;
use crate::statement::{StatementError, Table, Unreadable};

/// What is taken for a value of a field; whatever lies outside is a slip of the unit or of a
/// digit.
///
/// Bounds that name no source are wide on purpose (common practice, no source): they catch a
/// slip, they do not judge a design.
pub(super) struct Bounds {
    /// Least and greatest, in coherent SI units.
    pub range: RangeInclusive<f64>,
    /// What is wrong with a value outside them.
    pub problem: &'static str,
    /// The field's meaning with the bounds as people write them.
    pub accepted: &'static str,
}

impl Bounds {
    /// Whether a quantity lies within; a bound that is written in another unit may come out a
    /// rounding away.
    pub(super) fn take(&self, value: f64) -> bool {
        const ROUNDING: f64 = 1e-9;
        let (least, greatest) = (self.range.start(), self.range.end());
        (least * (1.0 - ROUNDING)..=greatest * (1.0 + ROUNDING)).contains(&value)
    }
}

/// The value of `key` as `parse` reads it, if it is there.
pub(super) fn read<Value, Problem: Into<Unreadable>>(
    table: &Table<'_, '_>,
    key: &'static str,
    parse: impl FnOnce(&str) -> Result<Value, Problem>,
) -> Result<Option<Value>, StatementError> {
    table
        .optional(key)?
        .map(|stated| stated.read(parse))
        .transpose()
}

/// The quantity of `key` within bounds, if it is there.
pub(super) fn within<Of: Dimension + ?Sized>(
    table: &Table<'_, '_>,
    key: &'static str,
    bounds: &Bounds,
    parse: impl FnOnce(&str) -> Result<Quantity<Of, SI<f64>, f64>, QuantityError>,
) -> Result<Option<Quantity<Of, SI<f64>, f64>>, StatementError> {
    let Some(stated) = table.optional(key)? else {
        return Ok(None);
    };
    let quantity = stated.read(parse)?;
    if bounds.take(quantity.value) {
        Ok(Some(quantity))
    } else {
        Err(stated.refuse(bounds.problem, bounds.accepted))
    }
}

/// The plain number of `key` within bounds, if it is there.
pub(super) fn number(
    table: &Table<'_, '_>,
    key: &'static str,
    bounds: &Bounds,
) -> Result<Option<f64>, StatementError> {
    read(table, key, |text| {
        let problem = match text.trim().parse::<f64>() {
            Ok(number) if bounds.range.contains(&number) => return Ok(number),
            Ok(_) => bounds.problem,
            Err(_) => "it is not a number",
        };
        Err(Unreadable {
            problem: problem.to_owned(),
            accepted: bounds.accepted.to_owned(),
        })
    })
}

/// The quantity of `key`, or the one word that may stand in its place, if it is there.
pub(super) fn word_or<Value>(
    table: &Table<'_, '_>,
    key: &'static str,
    (word, meaning): (&str, Value),
    accepted: &str,
    parse: impl FnOnce(&str) -> Result<Value, QuantityError>,
) -> Result<Option<Value>, StatementError> {
    read(table, key, |text| {
        if text.trim().eq_ignore_ascii_case(word) {
            return Ok(meaning);
        }
        parse(text).map_err(|error| Unreadable {
            problem: error.problem().to_owned(),
            accepted: accepted.to_owned(),
        })
    })
}
