//! What planks and posts have to carry beside what they can.

use super::notes::Notes;
use crate::barrier::BarrierDesign;
use crate::quantity::UnitSystem;
use crate::report::nearest::{Nearest, checks};
use crate::report::text::barrier::words::{nearest, percent, water};
use crate::report::text::page::{Page, columns_to_the_right, plain_table};
use crate::statement::Choice;

pub(super) fn print(page: &mut Page, notes: &mut Notes, design: &BarrierDesign, units: UnitSystem) {
    let mut table = plain_table();
    table.set_header(vec![
        "Part",
        "In",
        "Water",
        "Carries",
        "Can carry",
        "Used",
        "Source",
    ]);
    let legs = design.legs.len();
    for (leg, check) in checks(design) {
        let part = match leg {
            Some(leg) if legs > 1 => format!("{} of leg {leg}", check.part),
            _ => check.part.clone(),
        };
        table.add_row(vec![
            part,
            check.what.to_owned(),
            water(check.case).to_owned(),
            check.demand.text(units),
            check.capacity.text(units),
            percent(check.ratio()),
            notes.mark(&check.reference),
        ]);
    }
    if table.is_empty() {
        return;
    }
    page.heading("Strength of planks and posts, with load factors; deflection without");
    columns_to_the_right(&mut table, 3..6);
    page.table(&table);
    if let Some(found) = Nearest::of(design) {
        page.paragraph(
            &format!(
                "nearest to its limit: {}, used {} ({})",
                nearest(&found, legs),
                percent(found.used),
                found.case.word()
            ),
            "- ",
        );
    }
}
