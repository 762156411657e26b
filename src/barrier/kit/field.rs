//! Reading the dimensions of a part.

use crate::quantity::{Length, parse_length};
use crate::statement::{StatementError, Table};

/// A dimension that has to be there and to be more than nothing.
pub(super) fn dimension(
    table: &Table<'_, '_>,
    key: &'static str,
    meaning: &str,
) -> Result<Length, StatementError> {
    let accepted = format!("{meaning}, a length such as \"6 in\" or \"150 mm\"");
    let stated = table.required(key, &accepted)?;
    let length = stated.read(parse_length)?;
    if length.value <= 0.0 {
        return Err(stated.refuse("it is more than nothing", accepted));
    }
    Ok(length)
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

/// A length, if it is there.
pub(super) fn optional_length(
    table: &Table<'_, '_>,
    key: &'static str,
) -> Result<Option<Length>, StatementError> {
    table
        .optional(key)?
        .map(|stated| stated.read(parse_length))
        .transpose()
}
