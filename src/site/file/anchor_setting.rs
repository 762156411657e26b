//! `[floor]` and `[jamb]`: what anchors are set in.

use super::super::AnchorSetting;
use crate::statement::{StatementError, Table};

pub(in super::super) fn floor(
    table: &Table<'_, '_>,
) -> Result<Option<AnchorSetting>, StatementError> {
    not_yet(table, "floor")
}

pub(in super::super) fn jamb(
    table: &Table<'_, '_>,
) -> Result<Option<AnchorSetting>, StatementError> {
    not_yet(table, "jamb")
}

fn not_yet(
    table: &Table<'_, '_>,
    key: &'static str,
) -> Result<Option<AnchorSetting>, StatementError> {
    match table.whole(key) {
        Some(stated) => Err(stated.refuse("it is not read yet", "a file without it")),
        None => Ok(None),
    }
}
