//! `sillmark site`: one building.

use sillmark::assess::Sources;
use sillmark::quantity::UnitSystem;
use sillmark::report::{SiteRun, TextOptions, csv, json, page, text, write_site_layers};
use sillmark::site::{QuickForm, Site};
use sillmark::surroundings::Surroundings;
use sillmark::verdict::CautionTexts;

use super::arguments::{SiteFormat, SiteOptions};
use super::assessing::{Assessing, Drawn, site_of_file};
use super::brought::{Brought, word_without_keys};
use super::failure::Failure;
use super::output::Target;
use super::read_files::{named, read_files};
use super::today::today;

/// Columns of the text, as wide as a page of notes.
pub(super) const COLUMNS: usize = 96;

pub(super) fn run(options: &SiteOptions) -> Result<(), Failure> {
    let target = Target::open(options.output.output.as_deref(), &named(options))?;
    if options.format == SiteFormat::Gpkg {
        target.require_file("gpkg")?;
    }
    let site = site(options)?;
    let units = options.output.units.map_or(site.units, UnitSystem::from);
    let drawn = match options.format {
        SiteFormat::Html | SiteFormat::Gpkg => Drawn::Yes,
        SiteFormat::Text | SiteFormat::Json | SiteFormat::Csv => Drawn::No,
    };
    let assessing = Assessing::of(&site, &options.maps, &options.method, units, drawn)?;
    let Assessing {
        sources, brought, ..
    } = &assessing;
    let assessment = assessing.assess(&site)?;
    let cautions = CautionTexts::shipped().map_err(Failure::other)?;
    let around = |assessment| Surroundings::read(assessment, sources).map_err(Failure::input);
    let result = match options.format {
        SiteFormat::Text => text(
            &assessment,
            &cautions,
            TextOptions {
                trail: options.trail,
                columns: COLUMNS,
            },
        ),
        SiteFormat::Json => json(&assessment, &cautions).map_err(Failure::other)?,
        SiteFormat::Html => page(
            &assessment,
            &around(&assessment)?,
            &site_run(options, brought, sources)?,
            &cautions,
        )
        .map_err(Failure::other)?,
        SiteFormat::Csv => csv(&assessment),
        SiteFormat::Gpkg => {
            let around = around(&assessment)?;
            return target.fill("gpkg", |path| {
                write_site_layers(path, &assessment, &around).map_err(Failure::other)
            });
        }
    };
    target.write(&result)
}

/// The site of the file or of the options.
fn site(options: &SiteOptions) -> Result<Site, Failure> {
    let site = match &options.file {
        Some(path) => return site_of_file(path),
        None => QuickForm {
            at: stated(options.at.as_deref(), "--at", AT)?,
            threshold: stated(options.threshold.as_deref(), "--threshold", THRESHOLD)?,
            openings: &options.opening,
            occupancy: options.occupancy.as_deref(),
        }
        .site(),
    };
    site.map_err(Failure::input)
}

const AT: &str =
    "longitude and latitude in degrees, such as --at -74.0335,40.7400, or a site file instead";
const THRESHOLD: &str =
    "a height with its unit and vertical datum, such as --threshold \"8.1 ft NAVD88\"";

/// An option that a site without a file needs.
fn stated<'text>(
    value: Option<&'text str>,
    option: &str,
    accepted: &str,
) -> Result<&'text str, Failure> {
    value.ok_or_else(|| {
        Failure::input(format!(
            "option {option}: it is missing; accepted: {accepted}"
        ))
    })
}

/// What a page says of its run.
fn site_run(
    options: &SiteOptions,
    brought: &Brought,
    sources: &Sources,
) -> Result<SiteRun, Failure> {
    let command = std::env::args_os().map(|word| word_without_keys(&word.to_string_lossy()));
    Ok(SiteRun {
        version: env!("CARGO_PKG_VERSION").to_owned(),
        date: today(),
        command: std::iter::once("sillmark".to_owned())
            .chain(command.skip(1))
            .collect(),
        inputs: read_files(options, brought, &sources.datums.grids_read())?,
    })
}
