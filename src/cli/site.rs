//! `sillmark site`: one building.

use std::path::PathBuf;

use sillmark::assess::{Detail, Method, Sources, Uncertainty, assess};
use sillmark::barrier::DesignRules;
use sillmark::hazard::LayerPath;
use sillmark::load::LoadZone;
use sillmark::quantity::{UnitSystem, parse_annual_chance, parse_length};
use sillmark::report::{TextOptions, json, text};
use sillmark::site::{GivenDeviation, QuickForm, Site};
use sillmark::statement::{Place, Stated};
use sillmark::verdict::{CautionTexts, Limits};

use super::arguments::{Format, SiteOptions};
use super::failure::Failure;
use super::inputs;
use super::output::Target;

/// Columns of the text, as wide as a page of notes.
pub(super) const COLUMNS: usize = 96;

pub(super) fn run(options: &SiteOptions) -> Result<(), Failure> {
    let target = Target::open(options.output.output.as_deref(), &files(options))?;
    let site = site(options)?;
    let option = |field: &'static str, name: &str, text| {
        Stated::new(field, text, Place::Option(format!("option {name}").into()))
    };
    let radius = option(
        "length",
        "--grade-radius",
        options.dem.grade_radius.as_str(),
    );
    let chance = option("chance", "--chance", options.chance.as_str());
    let dem_sd = options
        .dem
        .dem_sd
        .as_deref()
        .map(|text| option("standard deviation", "--dem-sd", text));
    let dem_sd = dem_sd
        .as_ref()
        .map(GivenDeviation::read)
        .transpose()
        .map_err(Failure::input)?;
    let kit = inputs::kit(options.kit.as_deref())?;
    let method = Method {
        rule: inputs::rule(options.rule.as_deref(), &site)?,
        rules: DesignRules::of(&kit, &site.conditions.loads, LoadZone::Other)
            .map_err(Failure::input)?,
        kit,
        limits: Limits::shipped().map_err(Failure::other)?,
        event: chance.read(parse_annual_chance).map_err(Failure::input)?,
        grade_radius: radius.read(parse_length).map_err(Failure::input)?,
        uncertainty: Uncertainty::of(&site.uncertainty, dem_sd.as_ref()).map_err(Failure::input)?,
        years: options.years,
        units: options.output.units.map_or(site.units, UnitSystem::from),
        detail: Detail::Full,
    };
    sillmark::gis::start();
    let mut offsets = site.datum_offsets.clone();
    offsets.extend(inputs::datum_offsets(&options.offsets.datum_offset)?);
    let sources = Sources {
        datums: inputs::datums(&options.datums, offsets)?,
        zones: inputs::zones(&options.zones, site.location)?,
        levels: inputs::levels(options, site.location)?,
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
        Some(path) => {
            let text = inputs::text_file(path, "a site file (TOML in UTF-8)")?;
            Site::from_toml(&path.display().to_string(), &text)
        }
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

/// The files that the run reads.
fn files(options: &SiteOptions) -> Vec<PathBuf> {
    let layers = options
        .zones
        .zones
        .iter()
        .chain(&options.lines.lines)
        .chain(&options.sections.sections);
    let rasters = options.rasters.surface.iter().chain(&options.rasters.depth);
    options
        .file
        .iter()
        .chain(&options.kit)
        .chain(&options.dem.dem)
        .cloned()
        .chain(layers.map(|text| LayerPath::split(text).path))
        .chain(rasters.filter_map(|text| Some(PathBuf::from(text.split_once('=')?.1))))
        .chain([PathBuf::from(&options.zones.zones_schema)])
        .collect()
}
