//! Why an opening has its verdict.

use super::page::Page;
use super::place::place_lines;
use crate::assess::{Assessment, OpeningAssessment, YearlyChance, percent};
use crate::load::Hydrostatic;
use crate::quantity::UnitSystem;
use crate::risk::ChanceAtLevel;

pub(super) fn why(page: &mut Page, opening: &OpeningAssessment, assessment: &Assessment) {
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
    if let (Some(design), Some(top), true) = (
        &opening.at_design_level,
        &opening.at_top,
        opening.planks.is_some_and(|planks| planks.count > 0),
    ) {
        page.paragraph(
            &format!(
                "still water at the design level: {}; at the top of the barrier: {}{}",
                load(design, units),
                load(top, units),
                opening
                    .chance_over_top
                    .map(|chance| format!(
                        "; chance that the assessed flood passes the top: {}",
                        percent(chance)
                    ))
                    .unwrap_or_default(),
            ),
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

fn load(load: &Hydrostatic, units: UnitSystem) -> String {
    format!(
        "{} at the sill, {}, {}",
        units.pressure(load.pressure),
        units.line_load(load.force),
        units.moment_per_length(load.moment),
    )
}
