//! One barrier alone: the short answer, then what is open, then what to know.

use super::TextOptions;
use super::layout::lay_out;
use crate::assess::BarrierAssessment;
use crate::barrier::BarrierAnswer;
use crate::report::outline::Outline;
use crate::report::words::{
    barrier_lines, behind_lines_beside, behind_tasks, open_lines, sheet, trail,
};
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
    let mut page = Outline::default();
    page.paragraph(&headline(assessment), "");
    for reason in engineer_reasons(assessment) {
        page.paragraph(&reason, "- ");
    }
    if let Some(barrier) = &assessment.barrier {
        short_answer(&mut page, barrier, assessment);
        still_to_settle(&mut page, barrier, assessment);
    }
    page.heading("Know before you act");
    for caution in &assessment.cautions {
        page.paragraph(&texts.text(caution, units), "- ");
    }
    if options.trail {
        if let Some(barrier) = &assessment.barrier {
            page.heading("The barrier");
            page.gap();
            page.append(sheet(barrier, units));
        }
        trail(&mut page, &assessment.trail, units);
    }
    lay_out(&page, options.columns)
}

/// What is asked for, and the verdict in words.
fn headline(assessment: &BarrierAssessment) -> String {
    let units = assessment.method.units;
    let question = &assessment.question;
    let legs: Vec<String> = question
        .opening
        .run
        .iter()
        .map(|leg| units.dimension(*leg))
        .collect();
    let across = if legs.is_empty() {
        format!("{} wide", units.dimension(question.width))
    } else {
        format!("along {}", legs.join(" + "))
    };
    let built = assessment.barrier.as_ref();
    let height = built.map_or(question.height, |barrier| barrier.design.stack.height);
    let verdict = match assessment.verdict {
        Verdict::Engineer => "it needs a licensed engineer",
        _ => "it is within common limits with this kit",
    };
    format!(
        "{}: a barrier {across} and {} high for {} of water; {verdict}.",
        assessment.verdict.word(),
        units.height(height),
        units.height(question.depth)
    )
}

/// Why an engineer is needed.
fn engineer_reasons(assessment: &BarrierAssessment) -> impl Iterator<Item = String> {
    let units = assessment.method.units;
    let reasons = assessment.reasons.iter();
    reasons
        .filter(|reason| reason.verdict() == Verdict::Engineer)
        .map(move |reason| reason.text(units))
}

fn short_answer(page: &mut Outline, barrier: &BarrierAnswer, assessment: &BarrierAssessment) {
    let units = assessment.method.units;
    page.gap();
    let behind = assessment.behind.iter();
    let behind = behind.flat_map(|behind| behind_lines_beside(behind, barrier, units));
    for line in barrier_lines(barrier, units).into_iter().chain(behind) {
        page.paragraph(&line, "  ");
    }
}

fn still_to_settle(page: &mut Outline, barrier: &BarrierAnswer, assessment: &BarrierAssessment) {
    let units = assessment.method.units;
    let behind = assessment.behind.iter();
    let behind = behind.flat_map(|behind| behind_tasks(behind, units));
    let tasks: Vec<String> = open_lines(barrier, units)
        .into_iter()
        .chain(behind)
        .collect();
    if tasks.is_empty() {
        return;
    }
    page.heading("Still to settle");
    for task in tasks {
        page.paragraph(&task, "- ");
    }
}
