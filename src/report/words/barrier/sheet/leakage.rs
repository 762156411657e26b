//! The water that gets past, way by way.

use super::notes::Notes;
use crate::inflow::{Inflow, NotCounted, Reason};
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};

pub(super) fn print(page: &mut Outline, notes: &mut Notes, inflow: &Inflow, units: UnitSystem) {
    page.heading("Water that gets past, with water at the design level");
    if !inflow.parts.is_empty() {
        let mut table = Table::with_header(vec!["Way", "Flow", "Formula", "Source"]);
        for part in &inflow.parts {
            table.add_row(vec![
                part.way.to_string(),
                units.flow(part.flow),
                part.method.to_owned(),
                notes.mark(&part.citation.to_string()),
            ]);
        }
        let total = if inflow.is_complete() {
            "together"
        } else {
            "together at least"
        };
        if inflow.parts.len() > 1 || !inflow.is_complete() {
            table.add_row(vec![total.to_owned(), units.flow(inflow.total())]);
        }
        table.figures(1..2);
        page.table(table);
    }
    for other in &inflow.not_counted {
        page.paragraph(&not_counted(other, units), "- ");
    }
    for part in &inflow.parts {
        for missing in &part.not_stated {
            page.paragraph(&missing.to_string(), "- ");
        }
    }
}

/// A way in without a number, and why.
fn not_counted(other: &NotCounted, units: UnitSystem) -> String {
    match other.reason {
        Reason::NotStated(missing) => format!("not counted: {}, since {missing}", other.way),
        Reason::NotCovered {
            depth,
            tested_depth,
        } => format!(
            "not counted: {}, since the maker's statement is for {} of water and not for {}",
            other.way,
            units.height(tested_depth),
            units.height(depth)
        ),
    }
}
