//! The assessment for a terminal: the answer first, then why, then what to know.

mod alone;
mod barrier;
mod headline;
mod openings;
pub(super) mod page;
mod place;
mod trail;
mod why;

pub use self::alone::barrier_text;
pub use barrier::{barrier_lines, barrier_sheet, behind_lines, behind_tasks, open_lines};

use self::barrier::open_lines_by_part;
use self::headline::headline;
use self::openings::openings_table;
use self::page::Page;
use self::place::place_lines;
use self::trail::trail;
use self::why::why;
use crate::assess::Assessment;
use crate::verdict::CautionTexts;

/// How the text is laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TextOptions {
    /// Whether the trail is printed.
    pub trail: bool,
    /// Columns of a line.
    pub columns: usize,
}

/// The assessment as plain text.
#[must_use]
pub fn text(assessment: &Assessment<'_>, texts: &CautionTexts, options: TextOptions) -> String {
    let units = assessment.method.units;
    let mut page = Page::new(options.columns);
    page.paragraph(&headline(assessment), "");
    page.blank();
    place_lines(&mut page, &assessment.place, assessment, "");
    page.blank();
    page.table(&openings_table(assessment));
    page.heading("Why");
    for opening in &assessment.openings {
        why(&mut page, opening, assessment);
    }
    if let Some(behind) = &assessment.behind {
        page.heading("Behind the barriers");
        for line in behind_lines(behind, units) {
            page.paragraph(&line, "- ");
        }
    }
    still_to_settle(&mut page, assessment);
    page.heading("Know before you act");
    for caution in &assessment.cautions {
        page.paragraph(&texts.text(caution, units), "- ");
    }
    if options.trail {
        sheets(&mut page, assessment, options.columns);
        trail(&mut page, &assessment.trail, units);
    }
    page.text
}

/// What is open, each sentence once with the openings it is about, or with "every barrier"
/// where it is about all of them; last what is open for the building as a whole.
fn still_to_settle(page: &mut Page, assessment: &Assessment<'_>) {
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
    let behind = assessment.behind.iter();
    let of_all: Vec<String> = behind
        .flat_map(|behind| behind_tasks(behind, units))
        .collect();
    if about.is_empty() && of_all.is_empty() {
        return;
    }
    page.heading("Still to settle");
    for (line, openings) in about {
        let whose = if openings.len() == barriers && barriers > 1 {
            "every barrier".to_owned()
        } else {
            openings.join(", ")
        };
        page.paragraph(&format!("{whose}: {line}"), "- ");
    }
    for line in of_all {
        page.paragraph(&line, "- ");
    }
}

/// Every load, check and piece of each barrier.
fn sheets(page: &mut Page, assessment: &Assessment<'_>, columns: usize) {
    let units = assessment.method.units;
    for opening in &assessment.openings {
        if let Some(barrier) = &opening.barrier {
            page.heading(&format!("The barrier of {}", opening.opening.id));
            page.blank();
            page.text.push_str(&barrier_sheet(barrier, units, columns));
        }
    }
}
