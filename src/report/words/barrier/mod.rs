//! A barrier in words: the short answer, what is still to settle, and the whole sheet.

mod anchor_words;
mod behind;
mod not_checked;
mod open;
mod sheet;
mod short;
mod ways;
mod words;

pub(in crate::report) use behind::behind_lines_beside;
pub use behind::{behind_lines, behind_tasks};
pub use open::open_lines;
pub(in crate::report) use open::open_lines_by_part;
pub(in crate::report) use sheet::sheet;
pub use short::barrier_lines;
