//! Why an opening has its verdict.

use super::barrier::barrier_lines;
use super::place::place_table;
use crate::assess::{Assessment, OpeningAssessment, YearlyChance, percent};
use crate::quantity::UnitSystem;
use crate::report::outline::Outline;
use crate::risk::ChanceAtLevel;

/// Why an opening has its verdict, as one sentence without its full stop.
pub(in crate::report) fn reasons(opening: &OpeningAssessment<'_>, units: UnitSystem) -> String {
    let reasons = opening.reasons.iter();
    let reasons: Vec<String> = reasons.map(|reason| reason.text(units)).collect();
    reasons.join("; ")
}

/// What follows for the one who builds, and how often water comes, each behind `mark`.
pub(in crate::report) fn findings(
    page: &mut Outline,
    mark: &str,
    opening: &OpeningAssessment<'_>,
    assessment: &Assessment<'_>,
) {
    let units = assessment.method.units;
    if let Some(place) = &opening.place {
        page.paragraph("where this opening stands:", mark);
        page.table(place_table(place, assessment, "    "));
    }
    let years = assessment.method.years;
    for (what, chance) in [
        ("sill", opening.water_at_sill),
        ("top of the barrier", opening.water_at_top),
    ] {
        if let Some(chance) = chance {
            page.paragraph(&yearly(what, chance, years), mark);
        }
    }
    if let Some(barrier) = &opening.barrier {
        for line in barrier_lines(barrier, units) {
            page.paragraph(&line, mark);
        }
    }
    if let Some(chance) = opening.chance_over_top {
        let chance = percent(chance);
        page.paragraph(
            &format!("chance that the assessed flood passes its top: {chance}"),
            mark,
        );
    }
}

/// How often water reaches a height, in words.
fn yearly(what: &str, chance: YearlyChance, years: u32) -> String {
    let annual = match chance.annual {
        ChanceAtLevel::Known { chance, .. } => percent(chance.probability()),
        ChanceAtLevel::Beyond(beyond) => beyond.to_string(),
    };
    let over = chance
        .over_years
        .map(|chance| format!(", {} over {years} years", percent(chance)));
    format!(
        "water reaches the {what}: {annual} in any one year{}",
        over.unwrap_or_default()
    )
}
