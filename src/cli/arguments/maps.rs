//! Maps, rasters, terrain and datums, which several commands read.

use std::path::PathBuf;

use clap::Args;
use sillmark::quantity::{LengthUnit, VerticalDatum};

use super::services::ServiceOptions;

/// Everything that an answer is read from.
#[derive(Args, Clone, Debug)]
pub(crate) struct MapOptions {
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
    pub(crate) services: ServiceOptions,

    #[command(flatten)]
    pub(crate) datums: DatumOptions,

    #[command(flatten)]
    pub(crate) offsets: StatedOffsetOptions,
}

#[derive(Args, Clone, Debug)]
#[allow(clippy::doc_markdown)] // the comments are the help, which would show the backticks
pub(crate) struct ZoneOptions {
    /// Flood-zone layer: Shapefile, GeoPackage, GeoJSON, FlatGeobuf or file geodatabase, with
    /// the layer's name behind a colon where there are several; or the address of a service
    /// (OGC API - Features, GeoServices REST), with the layer's name behind a #. Repeat for more.
    #[arg(long, value_name = "PATH|ADDRESS", help_heading = "Flood zones")]
    pub(crate) zones: Vec<String>,

    /// Vertical datum of levels whose record does not say it.
    #[arg(long, value_name = "DATUM", help_heading = "Flood zones")]
    pub(crate) zones_datum: Option<VerticalDatum>,

    /// Unit of levels and depths whose record does not say it.
    #[arg(long, value_name = "UNIT", help_heading = "Flood zones")]
    pub(crate) zones_unit: Option<LengthUnit>,

    /// Coordinate system of a layer that does not say it, such as EPSG:4269.
    #[arg(long, value_name = "CRS", help_heading = "Flood zones")]
    pub(crate) zones_crs: Option<String>,

    /// How the layers are to be read: nfhl, england, extent:CHANCE (every polygon is flooded
    /// with that annual chance, such as extent:1%), or a mapping file of your own (.toml).
    #[arg(
        long,
        value_name = "SCHEMA",
        default_value = "nfhl",
        help_heading = "Flood zones"
    )]
    pub(crate) zones_schema: String,
}

#[derive(Args, Clone, Debug)]
pub(crate) struct RasterOptions {
    /// Raster of water-surface elevations of one flood: 1%=wse.tif. Repeat for other floods.
    #[arg(long, value_name = "CHANCE=PATH", help_heading = "Water rasters")]
    pub(crate) surface: Vec<String>,

    /// Vertical datum of the surfaces where the files do not say it.
    #[arg(long, value_name = "DATUM", help_heading = "Water rasters")]
    pub(crate) surface_datum: Option<VerticalDatum>,

    /// Unit of the surfaces where the files do not say it.
    #[arg(long, value_name = "UNIT", help_heading = "Water rasters")]
    pub(crate) surface_unit: Option<LengthUnit>,

    /// Coordinate system of the surfaces where the files do not say it.
    #[arg(long, value_name = "CRS", help_heading = "Water rasters")]
    pub(crate) surface_crs: Option<String>,

    /// Raster of water depths of one flood, to stand on the terrain: 1%=depth.tif. Repeat for
    /// other floods.
    #[arg(long, value_name = "CHANCE=PATH", help_heading = "Water rasters")]
    pub(crate) depth: Vec<String>,

    /// Unit of the depths where the files do not say it.
    #[arg(long, value_name = "UNIT", help_heading = "Water rasters")]
    pub(crate) depth_unit: Option<LengthUnit>,

    /// Coordinate system of the depths where the files do not say it.
    #[arg(long, value_name = "CRS", help_heading = "Water rasters")]
    pub(crate) depth_crs: Option<String>,
}

#[derive(Args, Clone, Debug)]
pub(crate) struct LineOptions {
    /// Flood-level lines (S_BFE of the National Flood Hazard Layer, or others), as a file or an
    /// address, as for --zones. Repeat for more.
    #[arg(long, value_name = "PATH|ADDRESS", help_heading = "Flood-level lines")]
    pub(crate) lines: Vec<String>,

    /// Vertical datum of their levels where their records do not say it.
    #[arg(long, value_name = "DATUM", help_heading = "Flood-level lines")]
    pub(crate) lines_datum: Option<VerticalDatum>,

    /// Unit of their levels where their records do not say it.
    #[arg(long, value_name = "UNIT", help_heading = "Flood-level lines")]
    pub(crate) lines_unit: Option<LengthUnit>,

    /// Coordinate system of a layer that does not say it, such as EPSG:4269.
    #[arg(long, value_name = "CRS", help_heading = "Flood-level lines")]
    pub(crate) lines_crs: Option<String>,

    /// Attribute that holds the level, where it is not called ELEV.
    #[arg(long, value_name = "ATTRIBUTE", help_heading = "Flood-level lines")]
    pub(crate) lines_level: Option<String>,

    /// Attribute that names the watercourse, where it is not called WTR_NM.
    #[arg(long, value_name = "ATTRIBUTE", help_heading = "Flood-level lines")]
    pub(crate) lines_watercourse: Option<String>,
}

#[derive(Args, Clone, Debug)]
pub(crate) struct SectionOptions {
    /// Cross-sections with water-surface levels (S_XS, or others), as a file or an address, as
    /// for --zones. Repeat for more.
    #[arg(long, value_name = "PATH|ADDRESS", help_heading = "Cross-sections")]
    pub(crate) sections: Vec<String>,

    /// Vertical datum of their levels where their records do not say it.
    #[arg(long, value_name = "DATUM", help_heading = "Cross-sections")]
    pub(crate) sections_datum: Option<VerticalDatum>,

    /// Unit of their levels where their records do not say it.
    #[arg(long, value_name = "UNIT", help_heading = "Cross-sections")]
    pub(crate) sections_unit: Option<LengthUnit>,

    /// Coordinate system of a layer that does not say it, such as EPSG:4269.
    #[arg(long, value_name = "CRS", help_heading = "Cross-sections")]
    pub(crate) sections_crs: Option<String>,

    /// Attribute that holds the level, where it is not called WSEL_REG.
    #[arg(long, value_name = "ATTRIBUTE", help_heading = "Cross-sections")]
    pub(crate) sections_level: Option<String>,

    /// Attribute that names the watercourse, where it is not called WTR_NM.
    #[arg(long, value_name = "ATTRIBUTE", help_heading = "Cross-sections")]
    pub(crate) sections_watercourse: Option<String>,
}

#[derive(Args, Clone, Debug)]
pub(crate) struct DemOptions {
    /// Terrain model: GeoTIFF or ASCII grid of one band, or the address of a GeoTIFF, of which
    /// the parts that are needed are read. Repeat for more; the finest that has ground at the
    /// place answers.
    #[arg(long, value_name = "PATH|ADDRESS", help_heading = "Terrain")]
    pub(crate) dem: Vec<PathBuf>,

    /// Vertical datum of the terrain where the file does not say it.
    #[arg(long, value_name = "DATUM", help_heading = "Terrain")]
    pub(crate) dem_datum: Option<VerticalDatum>,

    /// Unit of the terrain's heights where the file does not say it.
    #[arg(long, value_name = "UNIT", help_heading = "Terrain")]
    pub(crate) dem_unit: Option<LengthUnit>,

    /// Coordinate system of the terrain where the file does not say it, such as EPSG:26918.
    #[arg(long, value_name = "CRS", help_heading = "Terrain")]
    pub(crate) dem_crs: Option<String>,

    /// Standard deviation of the terrain: a length, or a name of `sillmark catalog uncertainty`
    /// such as QL2. Without it that of a site file counts, and without one it is not known.
    #[arg(long, value_name = "LENGTH|NAME", help_heading = "Terrain")]
    pub(crate) dem_sd: Option<String>,

    /// How far around a place to look for the lowest ground against the walls.
    #[arg(
        long,
        value_name = "LENGTH",
        default_value = "10 m",
        help_heading = "Terrain"
    )]
    pub(crate) grade_radius: String,
}

#[derive(Args, Clone, Debug)]
pub(crate) struct DatumOptions {
    /// Folder of vertical grids (PROJ's GeoTIFF grids) for conversions between datums; repeat
    /// for more. Without it the folders of `SILLMARK_GRIDS` and of PROJ's variables are searched.
    #[arg(long, value_name = "FOLDER", help_heading = "Vertical datums")]
    pub(crate) grids: Vec<PathBuf>,

    /// Let PROJ fetch missing grids over the network, where this build can.
    #[arg(long, help_heading = "Vertical datums")]
    pub(crate) grids_network: bool,
}

#[derive(Args, Clone, Debug)]
pub(crate) struct StatedOffsetOptions {
    /// An offset between two datums as a flood study prints it, with its source behind a
    /// semicolon: "NGVD29 -> NAVD88 = -1.1 ft; county flood study of 2006, table 2". Repeat for
    /// more. It wins over grids.
    #[arg(
        long,
        value_name = "OFFSET; SOURCE",
        allow_hyphen_values = true,
        help_heading = "Vertical datums"
    )]
    pub(crate) datum_offset: Vec<String>,
}
