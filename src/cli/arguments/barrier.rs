//! `sillmark barrier`.

use std::path::PathBuf;

use clap::Args;

use super::output::{Format, OutputOptions};

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

    /// Form of the result.
    #[arg(long, value_enum, default_value_t = Format::Text, help_heading = "Output")]
    pub(crate) format: Format,

    #[command(flatten)]
    pub(crate) output: OutputOptions,

    /// Print every load, check and piece, and how each figure came about (the JSON always has
    /// them).
    #[arg(long, help_heading = "Output")]
    pub(crate) trail: bool,
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
