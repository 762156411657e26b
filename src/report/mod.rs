//! An assessment for its readers: one exporter a file.
//!
//! An exporter prints an [`Assessment`](crate::assess::Assessment) and computes nothing;
//! [`portfolio`] prints the [`Summary`](crate::portfolio::summary::Summary) of many, [`mod@review`]
//! the [`Review`](crate::review::Review) of a proposal.

mod csv;
mod drawing;
mod geopackage;
mod json;
mod nearest;
mod outline;
mod page;
mod palette;
mod paragraph;
mod parts;
pub mod portfolio;
pub mod review;
mod site_run;
mod text;
mod words;

pub use csv::csv;
pub use geopackage::write_site_layers;
pub use json::{
    JsonBarrier, JsonBarrierReport, JsonBehind, JsonReport, barrier_json, barrier_json_schema,
    json, json_schema,
};
pub use page::page;
pub use palette::{verdict_colour, verdict_style};
pub use paragraph::paragraph;
pub use site_run::{InputFile, SiteRun};
pub use text::{TextOptions, barrier_sheet, barrier_text, text};
pub use words::{barrier_lines, behind_lines, behind_tasks, open_lines};
