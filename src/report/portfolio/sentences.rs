//! What text and page say in whole sentences.

use super::run_facts::RunFacts;
use super::words::{counted, rows, share};
use crate::portfolio::summary::Summary;
use crate::report::words::{ORDER, what_they_need};

/// What was counted, in one paragraph.
pub(super) fn headline(summary: &Summary, run: &RunFacts) -> String {
    let (read, assessed) = (summary.read(), summary.assessed());
    if read == 0 {
        return format!("{} holds no rows.", run.table());
    }
    if assessed == 0 {
        return format!(
            "None of the {} of {} could be read, so nothing was assessed.",
            rows(read),
            run.table()
        );
    }
    let verdicts = ORDER.map(|verdict| (verdict, summary.verdicts().of(verdict)));
    let parts: Vec<String> = verdicts
        .into_iter()
        .filter(|(_, number)| *number > 0)
        .map(|(verdict, number)| format!("{} {}", counted(number), what_they_need(verdict, number)))
        .collect();
    let rejected = match summary.rejected() {
        0 => String::new(),
        number => format!(
            " {} could not be read and {} in no other figure.",
            rows(number),
            if number == 1 { "is" } else { "are" }
        ),
    };
    format!(
        "Of {} of {}, {} assessed against the flood with {} annual chance by the rule {}: {}.{rejected}",
        rows(read),
        run.table(),
        match assessed {
            1 => "1 was".to_owned(),
            _ => format!("{} were", counted(assessed)),
        },
        run.event,
        run.rule_id,
        parts.join(", "),
    )
}

/// Of fewer rows nine in ten are all.
const FEWEST: u64 = 10;

/// How high most barriers have to be; `None` where too few have to be any.
pub(super) fn heights(summary: &Summary, run: &RunFacts) -> Option<String> {
    let bins = summary.heights();
    let at_most = |part| {
        let bin = bins.holding(part)?;
        Some(match (bin.up_to, bin.above) {
            (Some(up_to), _) => format!("at most {}", run.units.height(up_to)),
            (None, Some(above)) => format!("up to more than {}", run.units.height(above)),
            (None, None) => return None,
        })
    };
    let number = bins.above_nothing();
    if number < FEWEST {
        return None;
    }
    Some(format!(
        "{} have a protection height above zero: half of them need {}, nine in ten {} (read from steps of 0.1 m)",
        rows(number),
        at_most(0.5)?,
        at_most(0.9)?,
    ))
}

/// Which rows which figure leaves out.
pub(super) fn left_out(summary: &Summary) -> Vec<String> {
    let assessed = summary.assessed();
    let mut lines = Vec::new();
    let mut say = |number: u64, one: &str, many: &str| {
        if number > 0 {
            let what = if number == 1 { one } else { many };
            lines.push(format!("{} {what}", rows(number)));
        }
    };
    say(
        summary.rejected(),
        "was rejected and is in no figure but the first",
        "were rejected and are in no figure but the first",
    );
    say(
        summary.verdicts().of(crate::verdict::Verdict::Unresolved),
        "is unresolved: something that is needed is missing, which is not the same as dry",
        "are unresolved: something that is needed is missing, which is not the same as dry",
    );
    say(
        assessed.saturating_sub(summary.heights().total()),
        "has no protection height, because the design level or the sill is not known or the map has no flood there",
        "have no protection height, because the design level or the sill is not known or the map has no flood there",
    );
    say(
        assessed.saturating_sub(summary.lattice().total()),
        "has no place and is not on the map",
        "have no place and are not on the map",
    );
    let estimated = summary.estimated_thresholds();
    if estimated > 0 {
        lines.push(format!(
            "{} ({} of those assessed) {} on an estimated threshold",
            rows(estimated),
            share(estimated, assessed),
            if estimated == 1 { "stands" } else { "stand" },
        ));
    }
    lines
}
