//! `sillmark portfolio`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use sillmark::quantity::{LengthUnit, VerticalDatum};

use super::maps::MapOptions;
use super::method::MethodOptions;
use super::output::Units;
use super::table::TableOptions;

#[derive(Args, Debug)]
#[allow(clippy::doc_markdown)] // the comments are the help, which would show the backticks
pub(crate) struct PortfolioOptions {
    /// Table of buildings: CSV, GeoPackage, GeoJSON, FlatGeobuf or Parquet; - is CSV on stdin.
    /// Columns: id; longitude and latitude, or x and y with --crs, or points; threshold,
    /// threshold_unit, vertical_datum; threshold_above_ground, an estimate where nobody
    /// measured. Of openings, a row for each, also: building, opening, width, opening_height,
    /// sill_above_threshold, reveal, face, wall, occupancy.
    pub(crate) table: PathBuf,

    #[command(flatten)]
    pub(crate) reading: TableOptions,

    /// Unit of thresholds where no column states it.
    #[arg(long, value_name = "UNIT", help_heading = "Table")]
    pub(crate) threshold_unit: Option<LengthUnit>,

    /// Vertical datum of thresholds where no column states it.
    #[arg(long, value_name = "DATUM", help_heading = "Table")]
    pub(crate) threshold_datum: Option<VerticalDatum>,

    #[command(flatten)]
    pub(crate) maps: MapOptions,

    #[command(flatten)]
    pub(crate) method: MethodOptions,

    /// Units of sentences; without it those of each row's threshold. Figures are in metres.
    #[arg(long, value_enum, help_heading = "Output")]
    pub(crate) units: Option<Units>,

    /// Write the result to a file (.csv, .gpkg, .geojson, .fgb, .parquet) instead of CSV on
    /// stdout; it appears whole or not at all.
    #[arg(short, long, value_name = "PATH", help_heading = "Output")]
    pub(crate) output: Option<PathBuf>,

    /// Format of the result where its name does not tell: csv, gpkg, geojson, fgb, parquet.
    #[arg(long, value_name = "FORMAT", help_heading = "Output")]
    pub(crate) to: Option<String>,

    /// Put the rows with the greatest need first, with their rank in the first column (needs
    /// --output). Rows without a figure stand last and have no rank: they are not harmless.
    #[arg(long, value_enum, requires = "output", help_heading = "Output")]
    pub(crate) rank: Option<Ranking>,

    /// Leave the header line out (CSV on stdout), so that the results of a table's parts can
    /// follow each other.
    #[arg(long, conflicts_with = "output", help_heading = "Output")]
    pub(crate) no_header: bool,

    /// Write a summary: .txt, .json, or .html with a map and plots. Repeat for more. Without it
    /// a run with --output prints the text.
    #[arg(long, value_name = "PATH", help_heading = "Output")]
    pub(crate) summary: Vec<PathBuf>,

    /// Write rows that cannot be read to a CSV file, with line, field, value and reason.
    /// Without it they go to a file beside the result, its name with .rejects.csv, or to stderr.
    #[arg(long, value_name = "PATH", help_heading = "Output")]
    pub(crate) rejects: Option<PathBuf>,

    /// Stop where more rows than that cannot be read.
    #[arg(long, value_name = "NUMBER", help_heading = "Run")]
    pub(crate) max_rejects: Option<u64>,

    /// Continue a run that was stopped or killed, with the same options and files; its rows are
    /// not computed again.
    #[arg(long, requires = "output", help_heading = "Run")]
    pub(crate) resume: bool,

    /// Memory for rows under way and decoded terrain, such as "256 MB". Zones and the libraries
    /// come on top.
    #[arg(
        long,
        value_name = "SIZE",
        default_value = "176 MB",
        help_heading = "Run"
    )]
    pub(crate) memory: String,

    /// Threads that assess; without it one for each core.
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=1024), help_heading = "Run")]
    pub(crate) threads: Option<u16>,
}

/// What ranks rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Ranking {
    /// Protection height, the highest first.
    Height,
    /// Yearly chance of water at the sill, the greatest first.
    Chance,
}
