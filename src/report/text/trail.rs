//! How each figure came about, but for those that stand in the sheet of a barrier.

use super::page::Page;
use crate::assess::Trail;
use crate::quantity::UnitSystem;

pub(super) fn trail(page: &mut Page, trail: &Trail, units: UnitSystem) {
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
