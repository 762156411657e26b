//! What planks and posts have to carry beside what they can.

use super::notes::Notes;
use crate::barrier::{BarrierDesign, governing};
use crate::quantity::UnitSystem;
use crate::report::text::barrier::words::{part, percent, water};
use crate::report::text::page::{Page, columns_to_the_right, plain_table};

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
    for check in design.checks() {
        let over = if check.holds() { "" } else { " too much" };
        table.add_row(vec![
            check.part.clone(),
            check.what.to_owned(),
            water(check.case).to_owned(),
            check.demand.text(units),
            check.capacity.text(units),
            format!("{}{over}", percent(check.ratio())),
            notes.mark(&check.reference),
        ]);
    }
    let Some(worst) = governing(design.checks()) else {
        return;
    };
    page.heading("Strength of planks and posts, with load factors; deflection without");
    columns_to_the_right(&mut table, 3..6);
    page.table(&table);
    page.paragraph(
        &format!(
            "of these {} in {} is nearest to its limit",
            part(&worst.part),
            worst.what
        ),
        "- ",
    );
}
