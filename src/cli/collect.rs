//! `sillmark collect`: what services hold around some places, as a file.

use std::path::{Path, PathBuf};

use sillmark::collect::{ArrivedLayer, Places, WrittenLayer, write_layers};
use sillmark::hazard::LineKind;
use sillmark::service::Address;
use sillmark::site::place_of_option;
use sillmark::statement::{Place, Stated};

use super::arguments::CollectOptions;
use super::assessing::site_of_file;
use super::brought::{Access, Wanted, failure, level_names, tell};
use super::failure::Failure;
use super::inputs;
use super::output::Target;
use super::places::places_of_table;

pub(super) fn run(options: &CollectOptions) -> Result<(), Failure> {
    let inputs: Vec<PathBuf> = options.places.iter().cloned().collect();
    let target = Target::open(Some(&options.output), &inputs)?;
    require_geopackage(&options.output)?;
    require_addresses(options)?;
    let places = places(options)?;
    sillmark::gis::start();
    let schema = inputs::schema(&options.zones_schema)?;
    let of_lines = level_names(LineKind::LevelLines, options.lines_level.as_deref())?;
    let of_sections = level_names(LineKind::CrossSections, options.sections_level.as_deref())?;
    let access = Access::new(&options.services)?;
    let mut arrived: Vec<ArrivedLayer<'_>> = Vec::new();
    let zones = options.zones.iter();
    let zones = zones.map(|text| (text, Wanted::zones(&schema)));
    let lines = options.lines.iter();
    let lines = lines.map(|text| (text, Wanted::lines(LineKind::LevelLines, &of_lines)));
    let sections = options.sections.iter();
    let sections =
        sections.map(|text| (text, Wanted::lines(LineKind::CrossSections, &of_sections)));
    for (text, wanted) in zones.chain(lines).chain(sections) {
        arrived.push(wanted.ask(text, &access, &places)?);
    }
    let mut written = Vec::new();
    target.fill("gpkg", |path| {
        written = write_layers(arrived, path).map_err(failure)?;
        Ok(())
    })?;
    written.iter().for_each(tell);
    Target::Stdout.write(&told(&written, options))
}

/// The places to collect around.
fn places(options: &CollectOptions) -> Result<Places, Failure> {
    match (&options.places, &options.at) {
        (Some(path), _) if is_site_file(path) => Ok(site_of_file(path)?.location.into()),
        (Some(path), _) => {
            let places = places_of_table(path, &options.reading)?;
            if places.is_empty() {
                return Err(Failure::input(format!(
                    "{}: no row has a place; accepted: a table with a place in at least one row",
                    path.display()
                )));
            }
            Ok(places)
        }
        (None, at) => {
            let text = at.as_deref().ok_or_else(|| {
                Failure::input(
                    "no place is given; accepted: a site file, a table of buildings, or --at LON,LAT",
                )
            })?;
            place_of_option(text)
                .map(Places::from)
                .map_err(Failure::input)
        }
    }
}

fn is_site_file(path: &Path) -> bool {
    path.extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("toml"))
}

fn require_geopackage(path: &Path) -> Result<(), Failure> {
    let ending = path.extension();
    if ending.is_some_and(|ending| ending.eq_ignore_ascii_case("gpkg")) {
        return Ok(());
    }
    Err(Failure::input(format!(
        "option --output: {:?} is written as a GeoPackage and is not called one; accepted: a name that ends in .gpkg",
        path.display().to_string()
    )))
}

/// A file need not be collected, and nothing is not worth a file.
fn require_addresses(options: &CollectOptions) -> Result<(), Failure> {
    let layers = [
        ("--zones", &options.zones),
        ("--lines", &options.lines),
        ("--sections", &options.sections),
    ];
    if layers.iter().all(|(_, texts)| texts.is_empty()) {
        return Err(Failure::input(
            "no address is given; accepted: --zones, --lines or --sections with the address of a \
             service (`sillmark catalog services` lists some)",
        ));
    }
    for (option, texts) in layers {
        if let Some(file) = texts.iter().find(|text| !Address::is_meant(text)) {
            let place = Place::Option(format!("option {option}").into());
            return Err(Failure::input(Stated::new("address", file, place).refuse(
                "it is no address",
                "the address of a service, such as https://example.org/collections/zones; a file is read as it is",
            )));
        }
    }
    Ok(())
}

/// What was written, and how it is read.
fn told(layers: &[WrittenLayer], options: &CollectOptions) -> String {
    let file = options.output.display();
    let mut lines = vec![format!("{file}:")];
    for layer in layers {
        let features = match layer.features {
            0 => "none there".to_owned(),
            1 => "1 feature".to_owned(),
            features => format!("{features} features"),
        };
        let read_for = layer.read_for.title();
        lines.push(format!("  {} ({read_for}): {features}", layer.name));
        lines.push(format!("    from {}", layer.fetched));
        if let Some(licence) = &layer.fetched.licence {
            lines.push(format!("    licence: {licence}"));
        }
    }
    let read_by = layers.iter().map(|layer| {
        let schema = match layer.read_for.option() {
            "--zones" if options.zones_schema != "nfhl" => {
                format!(" --zones-schema {}", options.zones_schema)
            }
            _ => String::new(),
        };
        format!(
            "  {} '{file}:{}'{schema}",
            layer.read_for.option(),
            layer.name
        )
    });
    lines.push("Read it with:".to_owned());
    lines.extend(read_by);
    lines.join("\n") + "\n"
}
