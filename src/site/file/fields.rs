//! Fields that need not be there.

use crate::statement::{Choice, StatementError, Table, Unreadable};

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

/// The choice that `key` names, if it is there.
pub(super) fn choice<Picked: Choice>(
    table: &Table<'_, '_>,
    key: &'static str,
) -> Result<Option<Picked>, StatementError> {
    table
        .optional(key)?
        .map(|stated| stated.choose())
        .transpose()
}
