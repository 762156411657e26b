//! `[inside]`.

use super::super::InsideStatement;
use super::fields::read;
use crate::quantity::{parse_area, parse_length, parse_part, parse_rain};
use crate::statement::{StatementError, Table};

pub(in super::super) fn inside(root: &Table<'_, '_>) -> Result<InsideStatement, StatementError> {
    let Some(table) = root.table("inside")? else {
        return Ok(InsideStatement::default());
    };
    table.allow(&[
        "floor_area",
        "greatest_depth",
        "rain",
        "rain_area",
        "runoff",
        "pump_margin",
    ])?;
    Ok(InsideStatement {
        floor_area: read(&table, "floor_area", parse_area)?,
        greatest_depth: read(&table, "greatest_depth", parse_length)?,
        rain: read(&table, "rain", parse_rain)?,
        rain_area: read(&table, "rain_area", parse_area)?,
        runoff: read(&table, "runoff", parse_part)?,
        pump_margin: None,
    })
}
