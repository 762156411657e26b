//! How buildings are assessed, from the options that `site` and `portfolio` share.

use std::path::Path;

use sillmark::assess::{Detail, Method, Uncertainty};
use sillmark::barrier::DesignRules;
use sillmark::load::LoadZone;
use sillmark::quantity::{Length, UnitSystem, parse_annual_chance, parse_length};
use sillmark::site::{GivenDeviation, LoadStatement, RuleChoice, StatedUncertainty};
use sillmark::statement::{Place, Stated};
use sillmark::verdict::Limits;

use super::arguments::{DemOptions, MethodOptions};
use super::failure::Failure;
use super::inputs;

/// What a site file may say of the method beside the options; a table says nothing.
#[derive(Default)]
pub(super) struct OfSite<'a> {
    pub(super) rule: Option<&'a RuleChoice>,
    pub(super) loads: LoadStatement,
    pub(super) uncertainty: StatedUncertainty,
}

pub(super) fn method(
    options: &MethodOptions,
    dem: &DemOptions,
    site: &OfSite<'_>,
    units: UnitSystem,
    detail: Detail,
) -> Result<Method, Failure> {
    let chance = option("chance", "--chance", options.chance.as_str());
    let dem_sd = dem
        .dem_sd
        .as_deref()
        .map(|text| option("standard deviation", "--dem-sd", text));
    let dem_sd = dem_sd.as_ref().map(GivenDeviation::read).transpose();
    let dem_sd = dem_sd.map_err(Failure::input)?;
    let kit = inputs::kit(options.kit.as_deref().map(Path::new))?;
    Ok(Method {
        rule: inputs::rule(options.rule.as_deref(), site.rule)?,
        rules: DesignRules::of(&kit, &site.loads, LoadZone::Other).map_err(Failure::input)?,
        kit,
        limits: Limits::shipped().map_err(Failure::other)?,
        event: chance.read(parse_annual_chance).map_err(Failure::input)?,
        grade_radius: grade_radius(dem)?,
        uncertainty: Uncertainty::of(&site.uncertainty, dem_sd.as_ref()).map_err(Failure::input)?,
        years: options.years,
        units,
        detail,
    })
}

/// How far around a place the lowest ground is looked for.
pub(super) fn grade_radius(dem: &DemOptions) -> Result<Length, Failure> {
    let radius = option("length", "--grade-radius", dem.grade_radius.as_str());
    radius.read(parse_length).map_err(Failure::input)
}

fn option<'text>(field: &'static str, name: &str, text: &'text str) -> Stated<'text> {
    Stated::new(field, text, Place::Option(format!("option {name}").into()))
}
