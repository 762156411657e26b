//! The sentences and tables of an assessment, as outlines: what the text and the page both say.

mod barrier;
mod cautions;
mod fetched;
mod headline;
mod openings;
mod place;
mod to_settle;
mod trail;
mod verdict;
mod why;

pub use barrier::{barrier_lines, behind_lines, behind_tasks, open_lines};
pub(super) use barrier::{behind_lines_beside, sheet};
pub(super) use cautions::caution_lines;
pub(super) use fetched::fetched_lines;
pub(super) use headline::{headline, needs};
pub(super) use openings::openings_table;
pub(super) use place::place_table;
pub(super) use to_settle::still_to_settle;
pub(super) use trail::{trail, trail_table};
pub(super) use verdict::{ORDER, asks_for, label, what_they_need};
pub(super) use why::{findings, reasons};
