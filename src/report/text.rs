//! The assessment for a terminal: the answer first, then why, then what to know.

use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

use super::paragraph;
use crate::assess::{Assessment, GroundAnswer, OpeningAssessment, Place, YearlyChance};
use crate::quantity::{Length, UnitSystem};
use crate::risk::ChanceAtLevel;
use crate::statement::Choice;
use crate::verdict::{CautionTexts, MapStatement, Verdict};

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
    let mut page = Page {
        text: String::new(),
        columns: options.columns,
    };
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

struct Page {
    text: String,
    columns: usize,
}

impl Page {
    fn blank(&mut self) {
        self.text.push('\n');
    }

    fn heading(&mut self, heading: &str) {
        self.blank();
        self.paragraph(heading, "");
    }

    /// A paragraph behind a mark; its further lines are set in below the first.
    fn paragraph(&mut self, text: &str, mark: &str) {
        let set_in = " ".repeat(mark.chars().count());
        self.text
            .push_str(&paragraph(text, mark, &set_in, self.columns));
    }

    fn table(&mut self, table: &Table) {
        for line in table.to_string().lines() {
            self.text.push_str(line.trim_end());
            self.blank();
        }
    }
}

/// What has to happen, in one sentence.
fn headline(assessment: &Assessment) -> String {
    let count = |verdict| {
        assessment
            .openings
            .iter()
            .filter(|opening| opening.verdict == verdict)
            .count()
    };
    let mut parts = Vec::new();
    for (verdict, one, many) in [
        (Verdict::Protect, "needs a barrier", "need a barrier"),
        (
            Verdict::Engineer,
            "needs a licensed engineer",
            "need a licensed engineer",
        ),
        (Verdict::Unresolved, "is unresolved", "are unresolved"),
        (
            Verdict::Above,
            "needs none by this map and rule",
            "need none by this map and rule",
        ),
    ] {
        match count(verdict) {
            0 => {}
            1 => parts.push(format!("1 {one}")),
            number => parts.push(format!("{number} {many}")),
        }
    }
    let total = assessment.openings.len();
    format!(
        "{}: of {total} {}, {}.",
        assessment.site.name,
        if total == 1 { "opening" } else { "openings" },
        parts.join(", "),
    )
}

fn place_lines(page: &mut Page, place: &Place, assessment: &Assessment, set_in: &str) {
    let units = assessment.method.units;
    let mut table = plain_table();
    let zone = match &place.zone {
        Some(here) => (here.worst.title(), here.worst.record()),
        None => (
            "not known".to_owned(),
            if place.zones_given {
                "no polygon holds the place"
            } else {
                "no flood zones were given"
            }
            .to_owned(),
        ),
    };
    table.add_row(vec![format!("{set_in}Flood zone"), zone.0, zone.1]);
    let level = match &place.flood_level {
        Some(level) => {
            let sd = level
                .decided
                .sd
                .map(|sd| format!(" ± {}", units.height(sd * 2.0)));
            (
                format!(
                    "{}{}",
                    units.elevation(level.decided.elevation),
                    sd.unwrap_or_default()
                ),
                format!(
                    "{} annual chance, {}",
                    level.decided.chance,
                    level.decided.source.title()
                ),
            )
        }
        None => match &place.statement {
            MapStatement::NoFlood(_) => (
                "none".to_owned(),
                "the map has no such flood here".to_owned(),
            ),
            _ => ("not known".to_owned(), "no source has a level".to_owned()),
        },
    };
    table.add_row(vec![format!("{set_in}Flood level"), level.0, level.1]);
    if let Some(design) = &place.design_level {
        let base = design.governing.to_string();
        table.add_row(vec![
            format!("{set_in}Design level"),
            units.elevation(design.elevation),
            format!(
                "{base} + {}, rule {}",
                units.height(design.added),
                assessment.method.rule.id
            ),
        ]);
    }
    let ground = match &place.ground {
        GroundAnswer::Known(ground) => (units.elevation(ground.elevation), ground.source.clone()),
        GroundAnswer::Gap(gap) => ("not known".to_owned(), gap.to_string()),
        GroundAnswer::NotAsked => (
            "not known".to_owned(),
            "no terrain model was given".to_owned(),
        ),
    };
    table.add_row(vec![format!("{set_in}Ground"), ground.0, ground.1]);
    page.table(&table);
}

fn openings_table(assessment: &Assessment) -> Table {
    let units = assessment.method.units;
    let mut table = plain_table();
    table.set_header(vec![
        "Opening",
        "Verdict",
        "Width",
        "Sill",
        "Water",
        "Protect to",
        "Barrier",
        "Planks",
    ]);
    for opening in &assessment.openings {
        let height = |length: Option<Length>| {
            length.map_or_else(|| "?".to_owned(), |length| units.height(length))
        };
        table.add_row(vec![
            opening.opening.id.clone(),
            opening.verdict.word().to_owned(),
            units.dimension(opening.opening.width),
            opening
                .sill
                .map_or_else(|| "?".to_owned(), |sill| units.height(sill.height())),
            height(opening.depth),
            height(opening.protection_height),
            height(opening.planks.map(|planks| planks.height)),
            opening
                .planks
                .map_or_else(|| "?".to_owned(), |planks| planks.count.to_string()),
        ]);
    }
    for column in 2..8 {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table
}

fn why(page: &mut Page, opening: &OpeningAssessment, assessment: &Assessment) {
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
                        crate::assess::percent(chance)
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
        ChanceAtLevel::Known { chance, .. } => crate::assess::percent(chance.probability()),
        ChanceAtLevel::Beyond(beyond) => beyond.to_string(),
    };
    let over = chance
        .over_years
        .map(|chance| format!(", {} over {years} years", crate::assess::percent(chance)));
    format!(
        "water reaches the {what}: {annual} in any one year{}",
        over.unwrap_or_default()
    )
}

fn load(load: &crate::load::Hydrostatic, units: UnitSystem) -> String {
    format!(
        "{} at the sill, {}, {}",
        units.pressure(load.pressure),
        units.line_load(load.force),
        units.moment_per_length(load.moment),
    )
}

fn trail(page: &mut Page, assessment: &Assessment) {
    page.heading("How each figure came about");
    for step in assessment.trail.steps() {
        let reference = if step.reference.is_empty() {
            String::new()
        } else {
            format!(" [{}]", step.reference)
        };
        page.paragraph(
            &format!(
                "{}: {}, {}{reference}",
                step.quantity,
                step.value.text(assessment.method.units),
                step.how
            ),
            "- ",
        );
    }
}

fn plain_table() -> Table {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Disabled);
    table
}
