//! What can be typed.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use sillmark::quantity::{LengthUnit, UnitSystem, VerticalDatum};

/// Which openings of a building need a flood barrier, how high, and what the water does to it.
///
/// A screening, not a design: local code, the authority and a licensed engineer decide.
#[derive(Debug, Parser)]
#[command(version, max_term_width = 100)]
pub(crate) struct Arguments {
    /// Say on stderr what the map libraries report.
    #[arg(long, global = true)]
    pub(crate) verbose: bool,

    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Assess one building: its openings, the flood level, and what each opening needs.
    Site(Box<SiteOptions>),
    /// Work out one barrier for a width, a height and a depth of water that you state: loads,
    /// spans, posts, anchors, pieces. No maps.
    Barrier(Box<BarrierOptions>),
    /// List the rules, limits, kits, datums, sources and cautions that answers rest on.
    Catalog(CatalogOptions),
}

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

#[derive(Args, Debug)]
pub(crate) struct BarrierOptions {
    /// Nothing: what stands here was meant for an option, whose message says what it lacks.
    #[arg(hide = true, value_name = "WORD", value_parser = no_word)]
    pub(crate) word: Option<String>,

    /// Clear width of the opening: "36 in".
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Opening"
    )]
    pub(crate) width: Option<String>,

    /// Legs of a barrier that stands out from the wall, right angles between, each to the
    /// middle of its corner posts: "4 ft, 9 ft, 4 ft".
    #[arg(
        long,
        value_name = "LENGTHS",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Opening"
    )]
    pub(crate) run: Option<String>,

    /// Clear height of the opening, where a barrier could be too high for it.
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Opening"
    )]
    pub(crate) opening_height: Option<String>,

    /// Depth of the reveal, for an inside mount.
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Opening"
    )]
    pub(crate) reveal: Option<String>,

    /// Flat wall at each side, for an outside mount.
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Opening"
    )]
    pub(crate) face: Option<String>,

    /// The wall around the opening: reinforced concrete, reinforced masonry, unreinforced
    /// masonry, brick veneer, unsupported panel or frame.
    #[arg(long, value_name = "WALL", help_heading = "Opening")]
    pub(crate) wall: Option<String>,

    /// Height of the sill over the ground before it, negative below: "6 in".
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Opening"
    )]
    pub(crate) sill_above_ground: Option<String>,

    /// Soil against an opening below the ground, one of those that the message lists.
    #[arg(long, value_name = "SOIL", help_heading = "Opening")]
    pub(crate) soil: Option<String>,

    /// Depth of the water over the sill at the design level: "2 ft".
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Water"
    )]
    pub(crate) depth: Option<String>,

    /// Speed of the water: "3 ft/s".
    #[arg(
        long,
        value_name = "SPEED",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Water"
    )]
    pub(crate) velocity: Option<String>,

    /// fresh or salt.
    #[arg(long, value_name = "WATER", help_heading = "Water")]
    pub(crate) salinity: Option<String>,

    /// none, non-breaking or breaking.
    #[arg(long, value_name = "WAVES", help_heading = "Water")]
    pub(crate) waves: Option<String>,

    /// What the depth is the depth of where waves break: stillwater or crest.
    #[arg(long, value_name = "LEVEL", help_heading = "Water")]
    pub(crate) wave_level: Option<String>,

    /// Height over the sill that the barrier has to reach; the depth where it is not given.
    #[arg(
        long,
        value_name = "LENGTH",
        allow_hyphen_values = true,
        value_parser = not_an_option,
        help_heading = "Barrier"
    )]
    pub(crate) height: Option<String>,

    /// Where the end posts stand: inside or outside. Without it reveal and face decide.
    #[arg(long, value_name = "MOUNT", help_heading = "Barrier")]
    pub(crate) mount: Option<String>,

    /// Where a brace may stand: "dry side" or "water side".
    #[arg(long, value_name = "SIDE", help_heading = "Barrier")]
    pub(crate) brace: Option<String>,

    /// Kit file (TOML). Without it the invented demonstration kit is used, and the answer says
    /// so.
    #[arg(long, value_name = "PATH", help_heading = "Barrier")]
    pub(crate) kit: Option<PathBuf>,

    /// File (TOML) with the tables [water], [loads], [floor], [jamb], [inside] and [fitting] of
    /// a site file.
    #[arg(long, value_name = "PATH", help_heading = "Barrier")]
    pub(crate) conditions: Option<PathBuf>,

    #[command(flatten)]
    pub(crate) output: OutputOptions,

    /// Print every load, check and piece, and how each figure came about (the JSON always has
    /// them).
    #[arg(long, help_heading = "Output")]
    pub(crate) trail: bool,
}

#[derive(Args, Debug)]
pub(crate) struct ZoneOptions {
    /// Flood-zone layer: Shapefile, GeoPackage, GeoJSON, FlatGeobuf or file geodatabase, with
    /// the layer's name behind a colon where there are several. Repeat for more.
    #[arg(long, value_name = "PATH[:LAYER]", help_heading = "Flood zones")]
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

#[derive(Args, Debug)]
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

#[derive(Args, Debug)]
pub(crate) struct LineOptions {
    /// Flood-level lines (S_BFE of the National Flood Hazard Layer, or others), with the layer's name
    /// behind a colon where there are several. Repeat for more.
    #[arg(long, value_name = "PATH[:LAYER]", help_heading = "Flood-level lines")]
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

#[derive(Args, Debug)]
pub(crate) struct SectionOptions {
    /// Cross-sections with water-surface levels (S_XS, or others), with the layer's name
    /// behind a colon where there are several. Repeat for more.
    #[arg(long, value_name = "PATH[:LAYER]", help_heading = "Cross-sections")]
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

#[derive(Args, Debug)]
pub(crate) struct DemOptions {
    /// Terrain model: GeoTIFF or ASCII grid of one band. Repeat for more; the finest that has
    /// ground at the place answers.
    #[arg(long, value_name = "PATH", help_heading = "Terrain")]
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
    /// such as QL2. Without it the site file's counts, and without that one it is not known.
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

#[derive(Args, Debug)]
pub(crate) struct DatumOptions {
    /// Folder of vertical grids (PROJ's GeoTIFF grids) for conversions between datums; repeat
    /// for more. Without it the folders of `SILLMARK_GRIDS` and of PROJ's variables are searched.
    #[arg(long, value_name = "FOLDER", help_heading = "Vertical datums")]
    pub(crate) grids: Vec<PathBuf>,

    /// Let PROJ fetch missing grids over the network, where this build can.
    #[arg(long, help_heading = "Vertical datums")]
    pub(crate) grids_network: bool,
}

#[derive(Args, Debug)]
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

#[derive(Args, Debug)]
pub(crate) struct OutputOptions {
    /// Units of the text; without it, those that threshold or depth are written in.
    #[arg(long, value_enum, help_heading = "Output")]
    pub(crate) units: Option<Units>,

    /// Form of the result.
    #[arg(long, value_enum, default_value_t = Format::Text, help_heading = "Output")]
    pub(crate) format: Format,

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

#[derive(Args, Debug)]
pub(crate) struct CatalogOptions {
    /// What to list.
    #[arg(value_enum)]
    pub(crate) list: CatalogList,

    /// With `datums`: the grids that lead from one datum to another, instead of the common
    /// pairs: --pair NGVD29,NAVD88.
    #[arg(long, value_name = "FROM,TO", value_parser = pair_of_datums)]
    pub(crate) pair: Option<(VerticalDatum, VerticalDatum)>,

    #[command(flatten)]
    pub(crate) datums: DatumOptions,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum CatalogList {
    /// Freeboard rules.
    Rules,
    /// Limits of walls and flow.
    Limits,
    /// Barrier systems that ship with the project.
    Kits,
    /// Vertical datums by name, and which grids lead from one to another.
    Datums,
    /// Sources of a flood level, the highest authority first.
    Sources,
    /// Standard deviations of terrain, sills, levels and depths.
    Uncertainty,
    /// Flood-zone schemas.
    Schemas,
    /// Metals of planks and posts, with their strengths.
    Materials,
    /// Sets of load factors.
    Combinations,
    /// What common practice asks of a layout.
    Practice,
    /// Cautions.
    Cautions,
    /// The JSON Schema of `sillmark site --format json`.
    JsonSchema,
    /// The JSON Schema of `sillmark barrier --format json`.
    BarrierSchema,
}

/// A quantity may begin with a minus, for its own message; another option in its place says that
/// the quantity was forgotten.
fn not_an_option(text: &str) -> Result<String, String> {
    if text.starts_with("--") {
        return Err(format!(
            "the value is missing before {text}; accepted: a quantity with its unit, such as \"36 in\""
        ));
    }
    Ok(text.to_owned())
}

fn no_word(_: &str) -> Result<String, String> {
    Err(
        "it belongs to no option; accepted: options such as --width \"36 in\" --depth \"2 ft\""
            .to_owned(),
    )
}

fn pair_of_datums(text: &str) -> Result<(VerticalDatum, VerticalDatum), String> {
    let (from, to) = text
        .split_once(',')
        .ok_or("accepted: two datums with a comma between, such as NGVD29,NAVD88")?;
    let datum = |text: &str| {
        text.trim()
            .parse::<VerticalDatum>()
            .map_err(|error| error.to_string())
    };
    Ok((datum(from)?, datum(to)?))
}
