//! The cut list, and how the pieces are carried.

use super::notes::Notes;
use crate::barrier::BarrierAnswer;
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};
use crate::report::words::barrier::words::people;

pub(super) fn print(
    page: &mut Outline,
    notes: &mut Notes,
    answer: &BarrierAnswer,
    units: UnitSystem,
) {
    page.heading("Cut list, without plates, anchors, braces and covers");
    let mut table = Table::with_header(vec!["Piece", "Count", "Length", "Mass of one", "of all"]);
    for piece in &answer.design.pieces {
        let mass = |count: f64| {
            let mass = piece.mass.map(|mass| units.mass(mass * count));
            mass.unwrap_or_else(|| "?".to_owned())
        };
        table.add_row(vec![
            piece.name.clone(),
            piece.count.to_string(),
            units.dimension(piece.length),
            mass(1.0),
            mass(f64::from(piece.count)),
        ]);
    }
    table.figures(1..5);
    page.table(table);
    let handling = &answer.handling;
    let at_least = if handling.mass_not_stated.is_empty() {
        ""
    } else {
        "at least "
    };
    let lifted = handling.people_for_heaviest.map(|count| {
        format!(
            "; {} to lift the heaviest, each no more than {} {}",
            people(count),
            units.mass(handling.limit.mass),
            notes.mark(&handling.limit.citation.to_string())
        )
    });
    page.paragraph(
        &format!(
            "{} pieces, {at_least}{} in all{}",
            handling.pieces,
            units.mass(handling.total_mass),
            lifted.unwrap_or_default()
        ),
        "- ",
    );
}
