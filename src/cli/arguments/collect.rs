//! `sillmark collect`.

use std::path::PathBuf;

use clap::Args;

use super::services::ServiceOptions;
use super::table::TableOptions;

#[derive(Args, Debug)]
#[allow(clippy::doc_markdown)] // the comments are the help, which would show the backticks
pub(crate) struct CollectOptions {
    /// Site file (.toml), or table of buildings (CSV, GeoPackage, GeoJSON, FlatGeobuf, Parquet)
    /// of which the places alone are read. Without it, --at.
    #[arg(conflicts_with = "at")]
    pub(crate) places: Option<PathBuf>,

    /// Longitude and latitude in degrees, WGS 84: --at -74.0335,40.7400.
    #[arg(long, value_name = "LON,LAT", allow_hyphen_values = true)]
    pub(crate) at: Option<String>,

    /// Address of a layer of flood zones (OGC API - Features, GeoServices REST), with the
    /// layer's name behind a # where it leads to several. Repeat for more.
    #[arg(long, value_name = "ADDRESS", help_heading = "Maps")]
    pub(crate) zones: Vec<String>,

    /// How the zones are to be read later: nfhl, england, extent:CHANCE, or a mapping file of
    /// your own. The layers are checked for the attributes that it needs.
    #[arg(
        long,
        value_name = "SCHEMA",
        default_value = "nfhl",
        help_heading = "Maps"
    )]
    pub(crate) zones_schema: String,

    /// Address of a layer of flood-level lines. Repeat for more.
    #[arg(long, value_name = "ADDRESS", help_heading = "Maps")]
    pub(crate) lines: Vec<String>,

    /// Attribute that holds their level, where it is not called ELEV.
    #[arg(long, value_name = "ATTRIBUTE", help_heading = "Maps")]
    pub(crate) lines_level: Option<String>,

    /// Address of a layer of cross-sections. Repeat for more.
    #[arg(long, value_name = "ADDRESS", help_heading = "Maps")]
    pub(crate) sections: Vec<String>,

    /// Attribute that holds their level, where it is not called WSEL_REG.
    #[arg(long, value_name = "ATTRIBUTE", help_heading = "Maps")]
    pub(crate) sections_level: Option<String>,

    #[command(flatten)]
    pub(crate) reading: TableOptions,

    #[command(flatten)]
    pub(crate) services: ServiceOptions,

    /// The GeoPackage (.gpkg) to write; it appears whole or not at all.
    #[arg(short, long, value_name = "PATH", help_heading = "Output")]
    pub(crate) output: PathBuf,
}
