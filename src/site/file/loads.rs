//! `[loads]`.

use super::super::{CombinationChoice, LoadStatement};
use super::fields::{choice, read};
use crate::load::CombinationSet;
use crate::quantity::{parse_length, parse_ratio_of_span};
use crate::statement::{StatementError, Table};

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
        risk_category: choice(&table, "risk_category")?,
        debris: choice(&table, "debris")?,
        extra_depth: read(&table, "extra_depth", parse_length)?,
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
    let Some(stated) = loads.optional("combination")? else {
        return Ok(None);
    };
    Ok(Some(CombinationChoice::Named {
        id: stated.name()?,
        place: stated.place().clone(),
    }))
}
