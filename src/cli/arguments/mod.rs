//! What can be typed: one file a command, and what commands share.

mod barrier;
mod catalog;
mod collect;
mod maps;
mod method;
mod output;
mod portfolio;
mod review;
mod services;
mod site;
mod table;

pub(crate) use barrier::BarrierOptions;
pub(crate) use catalog::{CatalogList, CatalogOptions};
pub(crate) use collect::CollectOptions;
pub(crate) use maps::{
    DatumOptions, DemOptions, LineOptions, MapOptions, SectionOptions, ZoneOptions,
};
pub(crate) use method::MethodOptions;
pub(crate) use output::{Format, SiteFormat};
pub(crate) use portfolio::{PortfolioOptions, Ranking};
pub(crate) use review::{ReviewFormat, ReviewOptions};
pub(crate) use services::ServiceOptions;
pub(crate) use site::SiteOptions;
pub(crate) use table::TableOptions;

use clap::{Parser, Subcommand};

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
    /// Assess many buildings: a table in, a table out.
    Portfolio(Box<PortfolioOptions>),
    /// Hold somebody's proposal for one building against an assessment, point by point.
    Review(Box<ReviewOptions>),
    /// Work out one barrier for a width, a height and a depth of water that you state: loads,
    /// spans, posts, anchors, pieces. No maps.
    Barrier(Box<BarrierOptions>),
    /// Fetch what public services hold around a site or a table of sites into a GeoPackage,
    /// which the other commands read.
    Collect(Box<CollectOptions>),
    /// List the rules, limits, kits, datums, sources and cautions that answers rest on.
    Catalog(CatalogOptions),
}
