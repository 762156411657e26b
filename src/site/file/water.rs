//! `[water]`.

use super::super::WaterConditions;
use super::fields::{Bounds, within};
use crate::quantity::{parse_duration, parse_length, parse_velocity};
use crate::statement::{StatementError, Table};

const WALL_WIDTH: Bounds = Bounds {
    range: 0.1..=1000.0,
    problem: "no wall is that narrow or that wide",
    accepted: "the width of the wall across the flow, from 4 in (0.1 m) to 3280 ft (1000 m), such as \"35 ft\"",
};

pub(in super::super) fn water(root: &Table<'_, '_>) -> Result<WaterConditions, StatementError> {
    let Some(table) = root.table("water")? else {
        return Ok(WaterConditions::default());
    };
    table.allow(&["velocity", "salinity", "waves", "warning", "wall_width"])?;
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
        wall_width: within(&table, "wall_width", &WALL_WIDTH, parse_length)?,
        warning: table
            .optional("warning")?
            .map(|stated| stated.read(parse_duration))
            .transpose()?,
    })
}
