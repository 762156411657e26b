//! `sillmark review`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::maps::MapOptions;
use super::method::MethodOptions;
use super::output::Units;

#[derive(Args, Debug)]
pub(crate) struct ReviewOptions {
    /// Proposal (TOML): levels, openings with their barriers, loads, people, as far as somebody
    /// states them.
    pub(crate) proposal: PathBuf,

    /// Site file (TOML), as for `sillmark site`.
    pub(crate) site: PathBuf,

    #[command(flatten)]
    pub(crate) maps: MapOptions,

    #[command(flatten)]
    pub(crate) method: MethodOptions,

    /// Units of our figures; without it, those that the threshold is written in. Proposed
    /// figures are also told as they are written.
    #[arg(long, value_enum, help_heading = "Output")]
    pub(crate) units: Option<Units>,

    /// Form of the result.
    #[arg(long, value_enum, default_value_t = ReviewFormat::Text, help_heading = "Output")]
    pub(crate) format: ReviewFormat,

    /// Write the result to a file instead of stdout; it appears whole or not at all.
    #[arg(short, long, value_name = "PATH", help_heading = "Output")]
    pub(crate) output: Option<PathBuf>,
}

/// How a review is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum ReviewFormat {
    /// For people, in a terminal.
    Text,
    /// For programs: metres and newtons, by the published schema.
    Json,
    /// A page to read and to print; one file that needs nothing beside it.
    Html,
}
