//! What has to happen, in one sentence.

use crate::assess::Assessment;
use crate::verdict::Verdict;

/// What has to happen, in one sentence.
pub(in crate::report) fn headline(assessment: &Assessment<'_>) -> String {
    let count = |verdict| {
        assessment
            .openings
            .iter()
            .filter(|opening| opening.verdict == verdict)
            .count()
    };
    let mut parts = Vec::new();
    for (verdict, one, many) in [
        (Verdict::Protect, "needs a barrier", "need a barrier"),
        (
            Verdict::Engineer,
            "needs a licensed engineer",
            "need a licensed engineer",
        ),
        (Verdict::Unresolved, "is unresolved", "are unresolved"),
        (
            Verdict::Above,
            "needs none by this map and rule",
            "need none by this map and rule",
        ),
    ] {
        match count(verdict) {
            0 => {}
            1 => parts.push(format!("1 {one}")),
            number => parts.push(format!("{number} {many}")),
        }
    }
    let total = assessment.openings.len();
    format!(
        "{}: of {total} {}, {}.",
        assessment.site.name,
        if total == 1 { "opening" } else { "openings" },
        parts.join(", "),
    )
}
