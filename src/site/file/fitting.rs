//! `[fitting]`.

use super::super::FittingStatement;
use super::fields::read;
use crate::quantity::{parse_duration, parse_mass};
use crate::statement::{StatementError, Table};

pub(in super::super) fn fitting(root: &Table<'_, '_>) -> Result<FittingStatement, StatementError> {
    let Some(table) = root.table("fitting")? else {
        return Ok(FittingStatement::default());
    };
    table.allow(&["time_a_plank", "time_a_post", "parties", "lift"])?;
    Ok(FittingStatement {
        time_a_plank: read(&table, "time_a_plank", parse_duration)?,
        time_a_post: read(&table, "time_a_post", parse_duration)?,
        parties: None,
        lift: read(&table, "lift", parse_mass)?,
    })
}
