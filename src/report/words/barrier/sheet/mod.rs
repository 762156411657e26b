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
use super::not_checked::{Detail, not_checked};
use crate::barrier::BarrierAnswer;
use crate::quantity::UnitSystem;
use crate::report::outline::Outline;

/// Every figure of a barrier, each with its source. What the barrier falls short of and what is
/// still to settle are not in it.
pub(in crate::report) fn sheet(answer: &BarrierAnswer, units: UnitSystem) -> Outline {
    let design = &answer.design;
    let mut page = Outline::default();
    let mut notes = Notes::default();
    loads::print(&mut page, &mut notes, design, units);
    planks::print(&mut page, design, units);
    checks::print(&mut page, &mut notes, design, units);
    posts::print(&mut page, design, units);
    end_posts::print(&mut page, design, units);
    anchors::print(&mut page, &mut notes, design, units);
    pieces::print(&mut page, &mut notes, answer, units);
    leakage::print(&mut page, &mut notes, &answer.inflow, units);
    let open = not_checked(design, Detail::Full);
    if !open.is_empty() {
        page.heading("Not checked");
        for subject in open {
            page.paragraph(&subject, "- ");
        }
    }
    notes.print(&mut page);
    page
}
