//! How each figure came about, but for those that stand in the sheet of a barrier.

use crate::assess::Trail;
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};

pub(in crate::report) fn trail(page: &mut Outline, trail: &Trail, units: UnitSystem) {
    page.heading("How each figure came about");
    for step in trail.steps().iter().filter(|step| !step.in_sheet) {
        let reference = if step.reference.is_empty() {
            String::new()
        } else {
            format!(" [{}]", step.reference)
        };
        page.paragraph(
            &format!(
                "{}: {}, {}{reference}",
                step.quantity,
                step.value.text(units),
                step.how
            ),
            "- ",
        );
    }
}

/// The same as a table.
pub(in crate::report) fn trail_table(trail: &Trail, units: UnitSystem) -> Table {
    let mut table = Table::with_header(["Figure", "Value", "How it came about", "Source"]);
    for step in trail.steps().iter().filter(|step| !step.in_sheet) {
        table.add_row([
            step.quantity.clone(),
            step.value.text(units),
            step.how.clone(),
            step.reference.clone(),
        ]);
    }
    table
}
