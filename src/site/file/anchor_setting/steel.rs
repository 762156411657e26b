//! The steel of one anchor.

use super::super::fields::{Bounds, within};
use crate::anchor::Steel;
use crate::quantity::{parse_area, parse_stress};
use crate::statement::{StatementError, Table};

const AREA: Bounds = Bounds {
    range: 5e-6..=0.01,
    problem: "no anchor is that thin or that thick",
    accepted: "the effective area of one anchor, from 5 mm2 (0.008 in2) to 100 cm2 (15.5 in2), such as \"0.142 in2\"",
};

const STRENGTH: Bounds = Bounds {
    range: 1e8..=2e9,
    problem: "no steel is that weak or that strong",
    accepted: "the specified strength of the steel, from 14.6 ksi (100 MPa) to 290 ksi (2000 MPa), such as \"58 ksi\" or \"400 MPa\"",
};

pub(super) fn read(table: &Table<'_, '_>) -> Result<Steel, StatementError> {
    let steel = Steel {
        area: within(table, "steel_area", &AREA, parse_area)?,
        ultimate: within(table, "steel_ultimate", &STRENGTH, parse_stress)?,
        yield_strength: within(table, "steel_yield", &STRENGTH, parse_stress)?,
        ductility: table.choice("steel")?,
    };
    if let (Some(yielding), Some(ultimate)) = (steel.yield_strength, steel.ultimate)
        && yielding > ultimate
    {
        let stated = table.required("steel_yield", STRENGTH.accepted)?;
        return Err(stated.refuse(
            "it is more than steel_ultimate: no steel yields after it has broken",
            "a yield strength no greater than steel_ultimate",
        ));
    }
    Ok(steel)
}
