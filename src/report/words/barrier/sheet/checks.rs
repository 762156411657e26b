//! What planks and posts have to carry beside what they can.

use super::notes::Notes;
use crate::barrier::BarrierDesign;
use crate::quantity::UnitSystem;
use crate::report::nearest::{Nearest, checks};
use crate::report::outline::{Outline, Table};
use crate::report::words::barrier::words::{nearest, percent, water};
use crate::statement::Choice;

pub(super) fn print(
    page: &mut Outline,
    notes: &mut Notes,
    design: &BarrierDesign,
    units: UnitSystem,
) {
    let mut table = Table::with_header(vec![
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
    table.figures(3..6);
    page.table(table);
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
