//! `[loads]`.

use super::super::{CombinationChoice, LoadStatement};
use super::fields::{Bounds, read, within};
use crate::load::CombinationSet;
use crate::quantity::{parse_length, parse_ratio_of_span};
use crate::statement::{StatementError, Table};

const EXTRA_DEPTH: Bounds = Bounds {
    range: 0.0..=3.0,
    problem: "no rule adds that much to the depth for the load alone",
    accepted: "a depth that is added for the load only, from 0 ft to 9.8 ft (3 m), such as \"1 ft\"",
};

const COMBINATION: &str = "the id of a set of load factors, or [loads.combination] with name, source and strength of your own";

pub(in super::super) fn loads(root: &Table<'_, '_>) -> Result<LoadStatement, StatementError> {
    let Some(table) = root.table("loads")? else {
        return Ok(LoadStatement::default());
    };
    table.allow(&[
        "risk_category",
        "debris",
        "extra_depth",
        "deflection",
        "combination",
    ])?;
    Ok(LoadStatement {
        risk_category: table.choice("risk_category")?,
        debris: table.choice("debris")?,
        extra_depth: within(&table, "extra_depth", &EXTRA_DEPTH, parse_length)?,
        deflection: read(&table, "deflection", parse_ratio_of_span)?,
        combination: combination(&table)?,
    })
}

/// A set of load factors by its id, or one that the user writes. Whether the catalogue has
/// the id is for whoever looks it up.
fn combination(loads: &Table<'_, '_>) -> Result<Option<CombinationChoice>, StatementError> {
    if loads.holds_table("combination") {
        let set = loads.table("combination")?;
        return set
            .map(|table| {
                CombinationSet::read_stated(&table)
                    .map(|set| CombinationChoice::Written(Box::new(set)))
            })
            .transpose();
    }
    let stated = loads
        .optional("combination")
        .map_err(|error| StatementError {
            accepted: COMBINATION.to_owned(),
            ..error
        })?;
    let Some(stated) = stated else {
        return Ok(None);
    };
    Ok(Some(CombinationChoice::Named {
        id: stated.name()?,
        place: stated.place().clone(),
    }))
}
