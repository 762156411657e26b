//! Everything about a barrier: tables with their sources below.

mod anchors;
mod checks;
mod end_posts;
mod leakage;
mod loads;
mod notes;
mod pieces;
mod planks;
mod posts;

use self::notes::Notes;
use super::open::{Detail, subjects};
use crate::barrier::BarrierAnswer;
use crate::quantity::UnitSystem;
use crate::report::text::page::Page;

/// Every figure of a barrier as plain text, each with its source; paragraphs in lines of at
/// most `columns`, tables as wide as they are.
#[must_use]
pub fn barrier_sheet(answer: &BarrierAnswer, units: UnitSystem, columns: usize) -> String {
    let design = &answer.design;
    let mut page = Page::new(columns);
    let mut notes = Notes::default();
    loads::print(&mut page, &mut notes, design, units);
    planks::print(&mut page, design, units);
    checks::print(&mut page, &mut notes, design, units);
    posts::print(&mut page, design, units);
    end_posts::print(&mut page, design, units);
    anchors::print(&mut page, &mut notes, design, units);
    pieces::print(&mut page, &mut notes, answer, units);
    leakage::print(&mut page, &mut notes, &answer.inflow, units);
    if !design.shortfalls.is_empty() {
        page.heading("Needs a licensed engineer");
        for shortfall in &design.shortfalls {
            page.paragraph(&shortfall.text(units), "- ");
        }
    }
    let open = subjects(design, units, Detail::Full);
    if !open.is_empty() {
        page.heading("Still to settle");
        for subject in open {
            page.paragraph(&subject, "- ");
        }
    }
    notes.print(&mut page);
    page.text
}
