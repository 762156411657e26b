//! `sillmark site`.

use std::path::PathBuf;

use clap::Args;

use super::maps::MapOptions;
use super::method::MethodOptions;
use super::output::{OutputOptions, SiteFormat};

#[derive(Args, Debug)]
pub(crate) struct SiteOptions {
    /// Site file (TOML): location, threshold, water, openings. Without it, state the site with
    /// --at, --threshold and --opening.
    #[arg(conflicts_with_all = ["at", "threshold", "opening", "occupancy"])]
    pub(crate) file: Option<PathBuf>,

    /// Longitude and latitude in degrees, WGS 84: --at -74.0335,40.7400.
    #[arg(
        long,
        value_name = "LON,LAT",
        allow_hyphen_values = true,
        help_heading = "Site in a line"
    )]
    pub(crate) at: Option<String>,

    /// Threshold with unit and vertical datum: "8.1 ft NAVD88".
    #[arg(
        long,
        value_name = "ELEVATION",
        allow_hyphen_values = true,
        help_heading = "Site in a line"
    )]
    pub(crate) threshold: Option<String>,

    /// An opening with its clear width, its sill at the threshold: "front door=36 in".
    /// Repeat for each opening.
    #[arg(long, value_name = "NAME=WIDTH", help_heading = "Site in a line")]
    pub(crate) opening: Vec<String>,

    /// Use of the building: residential, commercial or critical.
    #[arg(long, value_name = "USE", help_heading = "Site in a line")]
    pub(crate) occupancy: Option<String>,

    #[command(flatten)]
    pub(crate) maps: MapOptions,

    #[command(flatten)]
    pub(crate) method: MethodOptions,

    /// Form of the result.
    #[arg(long, value_enum, default_value_t = SiteFormat::Text, help_heading = "Output")]
    pub(crate) format: SiteFormat,

    #[command(flatten)]
    pub(crate) output: OutputOptions,

    /// Print every load, check and piece of the barriers, and how each figure came about (the
    /// JSON always has them).
    #[arg(long, help_heading = "Output")]
    pub(crate) trail: bool,
}
