//! `[water]`.

use super::super::WaterConditions;
use crate::quantity::{parse_duration, parse_velocity};
use crate::statement::{StatementError, Table};

pub(in super::super) fn water(root: &Table<'_, '_>) -> Result<WaterConditions, StatementError> {
    let Some(table) = root.table("water")? else {
        return Ok(WaterConditions::default());
    };
    table.allow(&["velocity", "salinity", "waves", "warning"])?;
    Ok(WaterConditions {
        velocity: table
            .optional("velocity")?
            .map(|stated| stated.read(parse_velocity))
            .transpose()?,
        salinity: table
            .optional("salinity")?
            .map(|stated| stated.choose())
            .transpose()?,
        waves: table
            .optional("waves")?
            .map(|stated| stated.choose())
            .transpose()?,
        warning: table
            .optional("warning")?
            .map(|stated| stated.read(parse_duration))
            .transpose()?,
    })
}
