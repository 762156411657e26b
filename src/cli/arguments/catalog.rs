//! `sillmark catalog`.

use clap::{Args, ValueEnum};
use sillmark::quantity::VerticalDatum;

use super::maps::DatumOptions;

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
    /// Public services of maps and terrain, by their documentation.
    Services,
    /// Metals of planks and posts, with their strengths.
    Materials,
    /// Sets of load factors.
    Combinations,
    /// What common practice asks of a layout.
    Practice,
    /// Reasons of verdicts, by their codes.
    Reasons,
    /// Cautions, by their codes.
    Cautions,
    /// The JSON Schema of `sillmark site --format json`.
    JsonSchema,
    /// The JSON Schema of `sillmark barrier --format json`.
    BarrierSchema,
    /// The JSON Schema of `sillmark portfolio --summary FILE.json`.
    SummarySchema,
    /// The JSON Schema of `sillmark review --format json`.
    ReviewSchema,
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
