//! Why an opening has its verdict.

use super::barrier::barrier_lines;
use super::place::place_lines;
use crate::assess::{Assessment, OpeningAssessment, YearlyChance, percent};
use crate::report::outline::Outline;
use crate::risk::ChanceAtLevel;

pub(in crate::report) fn why(
    page: &mut Outline,
    opening: &OpeningAssessment<'_>,
    assessment: &Assessment<'_>,
) {
    let units = assessment.method.units;
    let reasons: Vec<String> = opening
        .reasons
        .iter()
        .map(|reason| reason.text(units))
        .collect();
    page.paragraph(
        &format!("{}: {}", opening.opening.id, reasons.join("; ")),
        "- ",
    );
    if let Some(place) = &opening.place {
        page.paragraph("where this opening stands:", "  ");
        place_lines(page, place, assessment, "    ");
    }
    let years = assessment.method.years;
    for (what, chance) in [
        ("sill", opening.water_at_sill),
        ("top of the barrier", opening.water_at_top),
    ] {
        if let Some(chance) = chance {
            page.paragraph(&yearly(what, chance, years), "  ");
        }
    }
    if let Some(barrier) = &opening.barrier {
        for line in barrier_lines(barrier, units) {
            page.paragraph(&line, "  ");
        }
    }
    if let Some(chance) = opening.chance_over_top {
        let chance = percent(chance);
        page.paragraph(
            &format!("chance that the assessed flood passes its top: {chance}"),
            "  ",
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
