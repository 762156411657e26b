//! The assessment for a terminal: the answer first, then why, then what to know.

mod alone;
mod layout;

pub use self::alone::barrier_text;
pub(super) use self::layout::lay_out;

use super::words::{
    behind_lines, caution_lines, fetched_lines, findings, headline, openings_table, place_table,
    reasons, sheet, still_to_settle, trail,
};
use crate::assess::Assessment;
use crate::barrier::BarrierAnswer;
use crate::quantity::UnitSystem;
use crate::report::outline::Outline;
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
    let mut page = Outline::default();
    page.paragraph(&headline(assessment), "");
    page.gap();
    page.table(place_table(&assessment.place, assessment, ""));
    page.gap();
    page.table(openings_table(assessment));
    page.heading("Why");
    for opening in &assessment.openings {
        let reasons = reasons(opening, units);
        page.paragraph(&format!("{}: {reasons}", opening.opening.id), "- ");
        if let Some(place) = &opening.place {
            page.paragraph("where this opening stands:", "  ");
            page.table(place_table(place, assessment, "    "));
        }
        for line in findings(opening, assessment) {
            page.paragraph(&line, "  ");
        }
    }
    let behind = assessment.behind.iter();
    let behind = behind.flat_map(|behind| behind_lines(behind, units));
    section(&mut page, "Behind the barriers", behind.collect());
    section(&mut page, "Still to settle", still_to_settle(assessment));
    let cautions = caution_lines(&assessment.cautions, texts, units);
    section(&mut page, "Know before you act", cautions);
    section(
        &mut page,
        "Read from services",
        fetched_lines(&assessment.maps),
    );
    if options.trail {
        sheets(&mut page, assessment);
        trail(&mut page, &assessment.trail, units);
    }
    lay_out(&page, options.columns)
}

/// A heading with a list; nothing where the list is empty.
fn section(page: &mut Outline, heading: &str, lines: Vec<String>) {
    if !lines.is_empty() {
        page.heading(heading);
    }
    for line in lines {
        page.paragraph(&line, "- ");
    }
}

/// Every load, check and piece of each barrier.
fn sheets(page: &mut Outline, assessment: &Assessment<'_>) {
    let units = assessment.method.units;
    for opening in &assessment.openings {
        if let Some(barrier) = &opening.barrier {
            page.heading(&format!("The barrier of {}", opening.opening.id));
            page.gap();
            page.append(sheet(barrier, units));
        }
    }
}

/// Every figure of a barrier as plain text, each with its source; paragraphs in lines of at
/// most `columns`, tables as wide as they are. What the barrier falls short of and what is
/// still to settle are not in it: [`open_lines`](super::open_lines) and the reasons of the
/// verdict say so.
#[must_use]
pub fn barrier_sheet(answer: &BarrierAnswer, units: UnitSystem, columns: usize) -> String {
    lay_out(&sheet(answer, units), columns)
}
