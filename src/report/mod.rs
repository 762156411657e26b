//! An assessment for its readers: one exporter a file.
//!
//! An exporter prints an [`Assessment`](crate::assess::Assessment) and computes nothing.

mod json;
mod nearest;
mod paragraph;
mod parts;
mod text;

pub use json::{JsonBarrier, JsonBehind, JsonReport, json, json_schema};
pub use paragraph::paragraph;
pub use text::{TextOptions, barrier_lines, barrier_sheet, behind_lines, open_lines, text};
