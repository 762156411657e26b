//! `sillmark site`.

use std::path::PathBuf;

use clap::Args;

use super::maps::{
    DatumOptions, DemOptions, LineOptions, RasterOptions, SectionOptions, StatedOffsetOptions,
    ZoneOptions,
};
use super::output::OutputOptions;

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
    pub(crate) zones: ZoneOptions,

    #[command(flatten)]
    pub(crate) rasters: RasterOptions,

    #[command(flatten)]
    pub(crate) lines: LineOptions,

    #[command(flatten)]
    pub(crate) sections: SectionOptions,

    #[command(flatten)]
    pub(crate) dem: DemOptions,

    #[command(flatten)]
    pub(crate) datums: DatumOptions,

    #[command(flatten)]
    pub(crate) offsets: StatedOffsetOptions,

    /// Flood to assess, by its annual chance.
    #[arg(
        long,
        value_name = "CHANCE",
        default_value = "1%",
        help_heading = "Method"
    )]
    pub(crate) chance: String,

    /// Years over which chances are shown, where levels of several floods are known.
    #[arg(long, value_name = "NUMBER", default_value_t = 30, value_parser = clap::value_parser!(u32).range(1..=1000), help_heading = "Method")]
    pub(crate) years: u32,

    /// Freeboard rule, by its id in `sillmark catalog rules`. Without it the rule of the site
    /// file counts, and without that one `none`.
    #[arg(long, value_name = "ID", help_heading = "Method")]
    pub(crate) rule: Option<String>,

    /// Kit file (TOML) with the dimensions of the barrier system. Without it the invented
    /// demonstration kit is used, and the answer says so.
    #[arg(long, value_name = "PATH", help_heading = "Method")]
    pub(crate) kit: Option<PathBuf>,

    #[command(flatten)]
    pub(crate) output: OutputOptions,

    /// Print every load, check and piece of the barriers, and how each figure came about (the
    /// JSON always has them).
    #[arg(long, help_heading = "Output")]
    pub(crate) trail: bool,
}
