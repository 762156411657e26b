//! `sillmark review`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::maps::MapOptions;
use super::method::MethodOptions;
use super::output::OutputOptions;

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

    /// Form of the result.
    #[arg(long, value_enum, default_value_t = ReviewFormat::Text, help_heading = "Output")]
    pub(crate) format: ReviewFormat,

    #[command(flatten)]
    pub(crate) output: OutputOptions,
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
