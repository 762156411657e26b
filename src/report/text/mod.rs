//! The assessment for a terminal: the answer first, then why, then what to know.

mod barrier;
mod headline;
mod openings;
mod page;
mod place;
mod trail;
mod why;

pub use barrier::{barrier_lines, barrier_sheet, behind_lines, open_lines};

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
pub fn text(assessment: &Assessment, texts: &CautionTexts, options: TextOptions) -> String {
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
    page.heading("Know before you act");
    for caution in &assessment.cautions {
        page.paragraph(&texts.text(caution, units), "- ");
    }
    if options.trail {
        trail(&mut page, assessment);
    }
    page.text
}
