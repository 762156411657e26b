//! How a result is told, and where.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use sillmark::quantity::UnitSystem;

#[derive(Args, Debug)]
pub(crate) struct OutputOptions {
    /// Units of the text; without it, those that threshold or depth are written in.
    #[arg(long, value_enum, help_heading = "Output")]
    pub(crate) units: Option<Units>,

    /// Write the result to a file instead of stdout; it appears whole or not at all.
    #[arg(short, long, value_name = "PATH", help_heading = "Output")]
    pub(crate) output: Option<PathBuf>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For people.
    Text,
    /// For programs: metres and newtons, by the published schema.
    Json,
}

/// How one building is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum SiteFormat {
    /// For people, in a terminal.
    Text,
    /// For programs: metres and newtons, by the published schema.
    Json,
    /// A page with drawings, to read and to print; one file that needs nothing beside it.
    Html,
    /// A table with a row an opening: metres and newtons, columns as of a portfolio.
    Csv,
    /// A GeoPackage of the site: openings, zones and lines; it needs --output.
    Gpkg,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Units {
    /// Feet, inches, pounds.
    Us,
    /// Metres, newtons.
    Si,
}

impl From<Units> for UnitSystem {
    fn from(units: Units) -> Self {
        match units {
            Units::Us => Self::Us,
            Units::Si => Self::Si,
        }
    }
}
