//! Why an opening has its verdict.

use super::barrier::barrier_lines;
use crate::assess::{Assessment, OpeningAssessment, YearlyChance, percent};
use crate::quantity::UnitSystem;
use crate::risk::ChanceAtLevel;

/// Why an opening has its verdict, as one sentence without its full stop.
pub(in crate::report) fn reasons(opening: &OpeningAssessment<'_>, units: UnitSystem) -> String {
    let reasons = opening.reasons.iter();
    let reasons: Vec<String> = reasons.map(|reason| reason.text(units)).collect();
    reasons.join("; ")
}

/// What follows for the one who builds, and how often water comes.
pub(in crate::report) fn findings(
    opening: &OpeningAssessment<'_>,
    assessment: &Assessment<'_>,
) -> Vec<String> {
    let (units, years) = (assessment.method.units, assessment.method.years);
    let heights = [
        ("sill", opening.water_at_sill),
        ("top of the barrier", opening.water_at_top),
    ];
    let heights = heights.into_iter();
    let often = heights.filter_map(|(what, chance)| Some(yearly(what, chance?, years)));
    let barrier = opening.barrier.iter();
    let barrier = barrier.flat_map(|barrier| barrier_lines(barrier, units));
    let over_top = opening.chance_over_top.map(|chance| {
        let chance = percent(chance);
        format!("chance that the assessed flood passes its top: {chance}")
    });
    often.chain(barrier).chain(over_top).collect()
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
