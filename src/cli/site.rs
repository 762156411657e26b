//! `sillmark site`: one building.

use sillmark::assess::{Method, Sources, assess};
use sillmark::quantity::{AnnualChance, UnitSystem, parse_length};
use sillmark::report::{TextOptions, json, text};
use sillmark::site::{QuickForm, Site};
use sillmark::statement::{Place, Stated};
use sillmark::verdict::{CautionTexts, Limits};

use super::arguments::{Format, SiteOptions};
use super::failure::Failure;
use super::inputs;
use super::output::Target;

/// Columns of the text, as wide as a page of notes.
const COLUMNS: usize = 96;

pub(super) fn run(options: &SiteOptions) -> Result<(), Failure> {
    let target = Target::open(options.output.output.as_deref())?;
    let site = site(options)?;
    let radius = Stated::new(
        "radius",
        options.dem.grade_radius.as_str(),
        Place::Option("option --grade-radius".into()),
    );
    let method = Method {
        rule: inputs::rule(options.rule.as_deref(), &site)?,
        kit: inputs::kit(options.kit.as_deref())?,
        limits: Limits::shipped().map_err(Failure::other)?,
        event: AnnualChance::ONE_PERCENT,
        grade_radius: radius.read(parse_length).map_err(Failure::input)?,
        units: options.output.units.map_or(site.units, UnitSystem::from),
    };
    sillmark::gis::start();
    let sources = Sources {
        zones: inputs::zones(&options.zones, site.location)?,
        terrain: inputs::terrain(&options.dem, site.location)?,
    };
    let assessment = assess(&site, &sources, &method).map_err(Failure::input)?;
    let cautions = CautionTexts::shipped().map_err(Failure::other)?;
    let result = match options.output.format {
        Format::Text => text(
            &assessment,
            &cautions,
            TextOptions {
                trail: options.trail,
                columns: COLUMNS,
            },
        ),
        Format::Json => json(&assessment, &cautions).map_err(Failure::other)?,
    };
    target.write(&result)
}

/// The site of the file or of the options.
fn site(options: &SiteOptions) -> Result<Site, Failure> {
    let site = match &options.file {
        Some(path) => Site::from_toml(&path.display().to_string(), &inputs::text_file(path)?),
        None => QuickForm {
            at: options.at.as_deref().unwrap_or_default(),
            threshold: options.threshold.as_deref().unwrap_or_default(),
            openings: &options.opening,
            occupancy: options.occupancy.as_deref(),
        }
        .site(),
    };
    site.map_err(Failure::input)
}
