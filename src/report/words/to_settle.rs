//! What somebody still has to measure, state or have checked.

use super::barrier::{behind_tasks, open_lines_by_part};
use crate::assess::Assessment;

/// What is open, each sentence once with the openings it is about, or with "every barrier"
/// where it is about all of them; last what is open for the building as a whole.
pub(in crate::report) fn still_to_settle(assessment: &Assessment<'_>) -> Vec<String> {
    let units = assessment.method.units;
    let mut about: Vec<(String, Vec<&str>)> = Vec::new();
    let mut barriers = 0;
    for opening in &assessment.openings {
        let Some(barrier) = &opening.barrier else {
            continue;
        };
        barriers += 1;
        for line in open_lines_by_part(barrier, units) {
            match about.iter_mut().find(|(known, _)| *known == line) {
                Some((_, openings)) => openings.push(&opening.opening.id),
                None => about.push((line, vec![&opening.opening.id])),
            }
        }
    }
    let of_each = about.into_iter().map(|(line, openings)| {
        if openings.len() == barriers && barriers > 1 {
            format!("every barrier: {line}")
        } else {
            format!("{}: {line}", openings.join(", "))
        }
    });
    let behind = assessment.behind.iter();
    let of_all = behind.flat_map(|behind| behind_tasks(behind, units));
    of_each.chain(of_all).collect()
}
