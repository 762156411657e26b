//! `sillmark catalog`: what answers rest on, one list a file.

mod cautions;
mod combinations;
mod datums;
mod kits;
mod limits;
mod list;
mod materials;
mod practice;
mod reasons;
mod rules;
mod schemas;
mod services;
mod sources;
mod uncertainty;

use sillmark::report::portfolio::portfolio_summary_schema;
use sillmark::report::review::review_schema;
use sillmark::report::{barrier_json_schema, json_schema};

use super::arguments::{CatalogList, CatalogOptions};
use super::failure::Failure;
use super::output::Target;

pub(super) fn run(options: &CatalogOptions) -> Result<(), Failure> {
    Target::Stdout.write(&text(options)?)
}

fn text(options: &CatalogOptions) -> Result<String, Failure> {
    match options.list {
        CatalogList::Rules => rules::list(),
        CatalogList::Limits => limits::list(),
        CatalogList::Kits => kits::list(),
        CatalogList::Datums => return datums::list(options),
        CatalogList::Sources => Ok(sources::list()),
        CatalogList::Uncertainty => uncertainty::list(),
        CatalogList::Schemas => schemas::list(),
        CatalogList::Services => services::list(),
        CatalogList::Materials => materials::list(),
        CatalogList::Combinations => combinations::list(),
        CatalogList::Practice => practice::list(),
        CatalogList::Reasons => Ok(reasons::list()),
        CatalogList::Cautions => cautions::list(),
        CatalogList::JsonSchema => return json_schema().map_err(Failure::other),
        CatalogList::BarrierSchema => return barrier_json_schema().map_err(Failure::other),
        CatalogList::ReviewSchema => return review_schema().map_err(Failure::other),
        CatalogList::SummarySchema => return portfolio_summary_schema().map_err(Failure::other),
    }
    .map_err(Failure::other)
}
