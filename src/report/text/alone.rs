//! One barrier alone: the short answer, then why, then what to know.

use super::TextOptions;
use super::barrier::{barrier_lines, barrier_sheet, behind_lines, open_lines};
use super::page::Page;
use super::trail::trail;
use crate::assess::BarrierAssessment;
use crate::statement::Choice;
use crate::verdict::{CautionTexts, Verdict};

/// One barrier as plain text.
#[must_use]
pub fn barrier_text(
    assessment: &BarrierAssessment,
    texts: &CautionTexts,
    options: TextOptions,
) -> String {
    let units = assessment.method.units;
    let mut page = Page::new(options.columns);
    page.paragraph(&headline(assessment), "");
    if let Some(barrier) = &assessment.barrier {
        page.blank();
        for line in barrier_lines(barrier, units) {
            page.paragraph(&line, "  ");
        }
        for line in assessment
            .behind
            .iter()
            .flat_map(|behind| behind_lines(behind, units))
        {
            page.paragraph(&line, "  ");
        }
        let open = open_lines(barrier, units);
        if !open.is_empty() {
            page.heading("Still to settle");
            for line in open {
                page.paragraph(&line, "- ");
            }
        }
        if options.trail {
            page.blank();
            page.text
                .push_str(&barrier_sheet(barrier, units, options.columns));
        }
    }
    page.heading("Know before you act");
    for caution in &assessment.cautions {
        page.paragraph(&texts.text(caution, units), "- ");
    }
    if options.trail {
        trail(&mut page, &assessment.trail, units);
    }
    page.text
}

fn headline(assessment: &BarrierAssessment) -> String {
    let units = assessment.method.units;
    let question = &assessment.question;
    let reasons: Vec<String> = assessment
        .reasons
        .iter()
        .filter(|reason| reason.verdict() == Verdict::Engineer)
        .map(|reason| reason.text(units))
        .collect();
    let asked = format!(
        "{} wide, {} high, for {} of water",
        units.dimension(question.opening.width),
        units.height(question.height),
        units.height(question.depth)
    );
    match assessment.verdict {
        Verdict::Engineer => format!(
            "{}: a barrier {asked}, needs a licensed engineer: {}.",
            assessment.verdict.word(),
            reasons.join("; ")
        ),
        _ => format!(
            "{}: a barrier {asked}, is within common limits with this kit.",
            assessment.verdict.word()
        ),
    }
}
