//! How each figure came about.

use super::page::Page;
use crate::assess::Assessment;

pub(super) fn trail(page: &mut Page, assessment: &Assessment) {
    page.heading("How each figure came about");
    for step in assessment.trail.steps() {
        let reference = if step.reference.is_empty() {
            String::new()
        } else {
            format!(" [{}]", step.reference)
        };
        page.paragraph(
            &format!(
                "{}: {}, {}{reference}",
                step.quantity,
                step.value.text(assessment.method.units),
                step.how
            ),
            "- ",
        );
    }
}
