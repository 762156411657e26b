//! What a run depends on: for its journal, and for its summary.

use std::path::Path;
use std::time::UNIX_EPOCH;

use sillmark::portfolio::Fingerprint;
use sillmark::portfolio::Plan;
use sillmark::portfolio::Role;
use sillmark::quantity::{Length, UnitSystem};
use sillmark::report::portfolio::RunFacts;
use sillmark::verdict::Caution;

use super::open::Opener;
use crate::cli::arguments::PortfolioOptions;
use crate::cli::brought::{Brought, without_keys};
use crate::cli::failure::Failure;
use crate::cli::tables::table_name;
use crate::cli::today::today;

/// Options and files by what changes when they do. How a run is carried out (memory, threads,
/// summaries) changes no row and is not among them.
pub(super) fn fingerprint(
    options: &PortfolioOptions,
    opener: &Opener<'_>,
) -> Result<Fingerprint, Failure> {
    let mut mark = Fingerprint::new();
    mark.insert(
        "the program".to_owned(),
        env!("CARGO_PKG_VERSION").to_owned(),
    );
    for (option, value) in asked(options) {
        mark.insert(format!("option {option}"), value);
    }
    for path in opener.files().iter().filter(|path| path.exists()) {
        let (name, state) = match opener.origin(path) {
            // Whenever it was fetched: what counts is what it holds.
            Some(origin) => (origin.from.clone(), origin.content.clone()),
            None => (
                path.display().to_string(),
                state(path).map_err(Failure::other)?,
            ),
        };
        mark.insert(name, state);
    }
    Ok(mark)
}

/// The options that rows depend on, by their names.
fn asked(options: &PortfolioOptions) -> Vec<(&'static str, String)> {
    let (maps, method) = (without_keys(&options.maps), &options.method);
    vec![
        ("--from", format!("{:?}", options.reading.from)),
        ("--layer", format!("{:?}", options.reading.layer)),
        ("--map", format!("{:?}", options.reading.map)),
        ("--columns", format!("{:?}", options.reading.columns)),
        ("--crs", format!("{:?}", options.reading.crs)),
        ("--threshold-unit", format!("{:?}", options.threshold_unit)),
        (
            "--threshold-datum",
            format!("{:?}", options.threshold_datum),
        ),
        ("--units", format!("{:?}", options.units)),
        (
            "--zones, or one of --zones-...,",
            format!("{:?}", maps.zones),
        ),
        (
            "--surface, --depth, or one of theirs,",
            format!("{:?}", maps.rasters),
        ),
        (
            "--lines, or one of --lines-...,",
            format!("{:?}", maps.lines),
        ),
        (
            "--sections, or one of --sections-...,",
            format!("{:?}", maps.sections),
        ),
        (
            "--dem, one of --dem-..., or --grade-radius",
            format!("{:?}", maps.dem),
        ),
        ("--grids or --grids-network", format!("{:?}", maps.datums)),
        ("--datum-offset", format!("{:?}", maps.offsets)),
        ("--chance", method.chance.clone()),
        ("--years", method.years.to_string()),
        ("--rule", format!("{:?}", method.rule)),
        ("--kit", format!("{:?}", method.kit)),
    ]
}

/// Length and time of the last change.
fn state(path: &Path) -> std::io::Result<String> {
    let facts = path.metadata()?;
    let changed = facts
        .modified()?
        .duration_since(UNIX_EPOCH)
        .unwrap_or_default();
    Ok(format!(
        "{} bytes, changed at {}",
        facts.len(),
        changed.as_nanos()
    ))
}

/// What a summary calls the maps of its run.
#[derive(Clone, Debug, Default)]
pub(super) struct MapNames {
    zones: Vec<String>,
    levels: Vec<String>,
    terrain: Vec<String>,
}

impl MapNames {
    /// Files as they were typed, answers of services by where they came from and when.
    pub(super) fn of(brought: &Brought) -> Self {
        let maps = &brought.maps;
        let shown = |texts: &[String]| texts.iter().map(|text| brought.shown(text)).collect();
        let levels = [
            &maps.rasters.surface,
            &maps.rasters.depth,
            &maps.sections.sections,
            &maps.lines.lines,
        ];
        let terrain = maps.dem.dem.iter();
        Self {
            zones: shown(&maps.zones.zones),
            levels: levels
                .into_iter()
                .flat_map(|texts| -> Vec<String> { shown(texts) })
                .collect(),
            terrain: terrain
                .map(|path| brought.shown(&path.to_string_lossy()))
                .collect(),
        }
    }
}

/// What a summary says of its run.
pub(super) fn run_facts(
    options: &PortfolioOptions,
    plan: &Plan,
    names: &MapNames,
    rejects: Option<&Path>,
) -> RunFacts {
    let mut more = Vec::new();
    if let Some(crs) = &options.reading.crs {
        more.push(("Coordinates".to_owned(), crs.clone()));
    }
    if let Some(sd) = &options.maps.dem.dem_sd {
        more.push(("Standard deviation of the terrain".to_owned(), sd.clone()));
    }
    RunFacts {
        cautions: cautions(plan),
        input: table_name(&options.table),
        zones: names.zones.clone(),
        levels: names.levels.clone(),
        terrain: names.terrain.clone(),
        rule_id: plan.method.rule.id.clone(),
        rule_name: plan.method.rule.name.clone(),
        event: plan.method.event,
        date: today(),
        units: plan.units.unwrap_or(UnitSystem::Si),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        rejects_file: rejects.map(|path| path.display().to_string()),
        options: more,
    }
}

/// The cautions that hold for all rows by rule, kit and what the table has no column for.
pub(super) fn cautions(plan: &Plan) -> Vec<Caution> {
    let method = &plan.method;
    let mut cautions = Vec::new();
    if method
        .rule
        .terms
        .iter()
        .all(|term| term.add <= Length::default())
    {
        cautions.push(Caution::NoFreeboard);
    }
    if plan.columns.has_widths() && method.kit.is_invented() {
        cautions.push(Caution::DemonstrationKit);
    }
    cautions.push(match plan.columns.at(Role::Occupancy) {
        Some(_) => Caution::ResidentialCompliance,
        None => Caution::OccupancyNotStated,
    });
    cautions
}
