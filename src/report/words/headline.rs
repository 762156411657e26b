//! What has to happen, in one sentence.

use super::verdict::{ORDER, what_they_need};
use crate::assess::Assessment;

/// What has to happen, in one sentence that begins with the site's name.
pub(in crate::report) fn headline(assessment: &Assessment<'_>) -> String {
    format!("{}: {}", assessment.site.name, needs(assessment))
}

/// The same without the name.
pub(in crate::report) fn needs(assessment: &Assessment<'_>) -> String {
    let count = |verdict| {
        assessment
            .openings
            .iter()
            .filter(|opening| opening.verdict == verdict)
            .count() as u64
    };
    let told = ORDER.map(|verdict| (count(verdict), verdict));
    let told = told.into_iter().filter(|(number, _)| *number > 0);
    let parts: Vec<String> = told
        .map(|(number, verdict)| format!("{number} {}", what_they_need(verdict, number)))
        .collect();
    let total = assessment.openings.len();
    format!(
        "of {total} {}, {}.",
        if total == 1 { "opening" } else { "openings" },
        parts.join(", "),
    )
}
