//! The openings side by side.

use crate::assess::Assessment;
use crate::quantity::Length;
use crate::report::outline::Table;
use crate::statement::Choice;

pub(in crate::report) fn openings_table(assessment: &Assessment<'_>) -> Table {
    let units = assessment.method.units;
    let mut table = Table::with_header(vec![
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
            opening
                .opening
                .width
                .map_or_else(|| "?".to_owned(), |width| units.dimension(width)),
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
    table.figures(2..8);
    table
}
