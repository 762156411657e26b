//! Reading the fields of a part.

use crate::quantity::{Length, QuantityError, parse_length};
use crate::statement::{StatementError, Table};

/// A quantity that has to be there and to be more than nothing.
pub(super) fn positive<Value: Default + PartialOrd>(
    table: &Table<'_, '_>,
    key: &'static str,
    accepted: &str,
    parse: impl FnOnce(&str) -> Result<Value, QuantityError>,
) -> Result<Value, StatementError> {
    let stated = table.required(key, accepted)?;
    let value = stated.read(parse)?;
    if value <= Value::default() {
        return Err(stated.refuse("it has to be more than nothing", accepted));
    }
    Ok(value)
}

/// The same of a quantity that need not be there.
pub(super) fn optional_positive<Value: Default + PartialOrd>(
    table: &Table<'_, '_>,
    key: &'static str,
    accepted: &str,
    parse: impl FnOnce(&str) -> Result<Value, QuantityError>,
) -> Result<Option<Value>, StatementError> {
    match table.whole(key) {
        None => Ok(None),
        Some(_) => positive(table, key, accepted, parse).map(Some),
    }
}

/// A dimension that has to be there and to be more than nothing.
pub(super) fn dimension(
    table: &Table<'_, '_>,
    key: &'static str,
    meaning: &str,
) -> Result<Length, StatementError> {
    let accepted = format!("{meaning}, a length such as \"6 in\" or \"150 mm\"");
    positive(table, key, &accepted, parse_length)
}

/// A length that has to be there and may be nothing.
pub(super) fn length(
    table: &Table<'_, '_>,
    key: &'static str,
    meaning: &str,
) -> Result<Length, StatementError> {
    let accepted = format!("{meaning}, a length such as \"0.25 in\" or \"0 mm\"");
    table.required(key, &accepted)?.read(parse_length)
}
