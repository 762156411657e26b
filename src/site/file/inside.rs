//! `[inside]`.

use super::super::InsideStatement;
use super::fields::{Bounds, number, read, within};
use crate::quantity::{parse_area, parse_length, parse_part, parse_rain};
use crate::statement::{StatementError, Table};

const AREA: Bounds = Bounds {
    range: 0.1..=1e6,
    problem: "no floor, roof or yard is that small or that large",
    accepted: "an area from 1.1 ft2 (0.1 m2) to 10000000 ft2 (929000 m2), such as \"600 ft2\" or \"55 m2\"",
};

const DEPTH: Bounds = Bounds {
    range: 1e-3..=10.0,
    problem: "no depth of water in a room is that small or that great",
    accepted: "the depth of water inside that must not be passed, from 0.04 in (1 mm) to 32 ft (10 m), such as \"4 in\"",
};

/// A pump for less than the inflow lets the room fill; ten times is a slip, such as a
/// percentage.
const MARGIN: Bounds = Bounds {
    range: 1.0..=10.0,
    problem: "it is out of range",
    accepted: "how many times the inflow the pump has to manage, a number from 1 to 10, such as 1.5",
};

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
        floor_area: within(&table, "floor_area", &AREA, parse_area)?,
        greatest_depth: within(&table, "greatest_depth", &DEPTH, parse_length)?,
        rain: read(&table, "rain", parse_rain)?,
        rain_area: within(&table, "rain_area", &AREA, parse_area)?,
        runoff: read(&table, "runoff", parse_part)?,
        pump_margin: number(&table, "pump_margin", &MARGIN)?,
    })
}
