//! From what was typed to what it means: files read, layers opened.

use std::fs::File;
use std::io::Read as _;
use std::path::{Path, PathBuf};

use sillmark::barrier::Kit;
use sillmark::crs::{DatumSettings, Datums};
use sillmark::design::{Rule, rules};
use sillmark::hazard::{
    LayerPath, LevelLineMap, LineKind, LineStatement, Part, Schema, SchemaChoice, ZoneMap,
    ZoneStatement, read_level_lines, read_zones_by,
};
use sillmark::level::{EventRaster, LevelMaps};
use sillmark::quantity::{AnnualChance, parse_annual_chance};
use sillmark::site::{Location, RuleChoice, StatedOffset};
use sillmark::statement::{Place, Stated, line_of};
use sillmark::terrain::{Dem, DemStatement, DepthRaster, Terrain, TerrainError};

use super::arguments::{
    DatumOptions, DemOptions, LineOptions, MapOptions, SectionOptions, ZoneOptions,
};
use super::failure::Failure;

/// No site or kit is longer; what is, is another kind of file.
const LONGEST_TEXT_BYTES: u64 = 1 << 20;

/// A text file that the user names; `what` it should be, for messages.
pub(super) fn text_file(path: &Path, what: &str) -> Result<String, Failure> {
    let refused =
        |problem: &str| Failure::input(format!("{}: {problem}; accepted: {what}", path.display()));
    let unreadable = |error: std::io::Error| refused(&format!("cannot be read: {error}"));
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(unreadable)?;
    file.take(LONGEST_TEXT_BYTES + 1)
        .read_to_end(&mut bytes)
        .map_err(unreadable)?;
    if bytes.len() as u64 > LONGEST_TEXT_BYTES {
        return Err(refused("is longer than a mebibyte"));
    }
    String::from_utf8(bytes).map_err(|error| {
        let line = line_of(error.as_bytes(), error.utf8_error().valid_up_to());
        Failure::input(format!(
            "{}, line {line}: it is not UTF-8 text; accepted: {what}",
            path.display()
        ))
    })
}

/// The rule of `--rule`, of the site file, or `none`.
pub(super) fn rule(option: Option<&str>, of_site: Option<&RuleChoice>) -> Result<Rule, Failure> {
    let (id, place) = match (option, of_site) {
        (Some(id), _) => (id, Place::Option("option --rule".into())),
        (None, Some(RuleChoice::Written(rule))) => return Ok(rule.as_ref().clone()),
        (None, Some(RuleChoice::Named { id, place })) => (id.as_str(), place.clone()),
        (None, None) => ("none", Place::Option("option --rule".into())),
    };
    let known = rules().map_err(Failure::other)?;
    if let Some(rule) = known.iter().find(|rule| rule.id == id) {
        return Ok(rule.clone());
    }
    let ids: Vec<&str> = known.iter().map(|rule| rule.id.as_str()).collect();
    Err(Failure::input(
        Stated::new("rule", id, place).refuse("there is no such rule", ids.join(", ")),
    ))
}

/// The kit of `--kit`, or the demonstration's.
pub(super) fn kit(option: Option<&Path>) -> Result<Kit, Failure> {
    match option {
        Some(path) => {
            let text = text_file(path, "a kit file (TOML in UTF-8)")?;
            Kit::from_toml(&path.display().to_string(), &text).map_err(Failure::input)
        }
        None => Kit::demonstration().map_err(Failure::other),
    }
}

/// What converts between vertical datums: grids, and the offsets that the user states.
pub(super) fn datums(
    options: &DatumOptions,
    offsets: Vec<StatedOffset>,
) -> Result<Datums, Failure> {
    Datums::new(DatumSettings {
        grid_folders: options.grids.clone(),
        network: options.grids_network,
        stated_offsets: offsets,
    })
    .map_err(Failure::input)
}

/// The offsets of `--datum-offset`.
pub(super) fn datum_offsets(options: &[String]) -> Result<Vec<StatedOffset>, Failure> {
    options
        .iter()
        .map(|text| {
            let place = Place::Option("option --datum-offset".into());
            let whole = Stated::new("offset", text.as_str(), place.clone());
            let (offset, source) = text.split_once(';').ok_or_else(|| {
                whole.refuse(
                    "it has no source behind a semicolon",
                    "\"NGVD29 -> NAVD88 = -1.1 ft; county flood study of 2006, table 2\"",
                )
            })?;
            let offset = Stated::new("offset", offset.trim(), place.clone());
            StatedOffset::new(&offset, &Stated::new("source", source, place), None)
        })
        .collect::<Result<_, _>>()
        .map_err(Failure::input)
}

/// The zone layers, a part of them or all.
pub(super) fn zones(options: &ZoneOptions, part: Option<Part>) -> Result<Vec<ZoneMap>, Failure> {
    let statement = ZoneStatement {
        unit: options.zones_unit,
        datum: options.zones_datum,
        crs: options.zones_crs.clone(),
    };
    let schema = schema(&options.zones_schema)?;
    options
        .zones
        .iter()
        .map(|text| {
            let source = LayerPath::split(text);
            read_zones_by(
                &schema,
                &source.path,
                source.layer.as_deref(),
                &statement,
                part,
            )
            .map_err(Failure::input)
        })
        .collect()
}

pub(super) fn schema(text: &str) -> Result<Schema, Failure> {
    let stated = Stated::new(
        "zones schema",
        text,
        Place::Option("option --zones-schema".into()),
    );
    match SchemaChoice::read(&stated).map_err(Failure::input)? {
        SchemaChoice::Shipped(schema) => Ok(*schema),
        SchemaChoice::File(path) => {
            let text = text_file(&path, "a mapping file (TOML in UTF-8)")?;
            Schema::from_toml(&path.display().to_string(), &text).map_err(Failure::input)
        }
    }
}

/// Everything that states levels beside the zones.
pub(super) fn levels(
    options: &MapOptions,
    location: Option<Location>,
) -> Result<LevelMaps, Failure> {
    let rasters = &options.rasters;
    let of_surfaces = DemStatement {
        unit: rasters.surface_unit,
        datum: rasters.surface_datum,
        crs: rasters.surface_crs.clone(),
    };
    let of_depths = DemStatement {
        unit: rasters.depth_unit,
        datum: None,
        crs: rasters.depth_crs.clone(),
    };
    Ok(LevelMaps {
        surfaces: event_rasters("--surface", &rasters.surface, |path| {
            Dem::open_surface(path, &of_surfaces)
        })?,
        depths: event_rasters("--depth", &rasters.depth, |path| {
            DepthRaster::open(path, &of_depths)
        })?,
        lines: level_lines(&options.lines, &options.sections, location)?,
    })
}

/// The rasters of `CHANCE=PATH`.
fn event_rasters<R>(
    option: &str,
    texts: &[String],
    open: impl Fn(&Path) -> Result<R, TerrainError>,
) -> Result<Vec<EventRaster<R>>, Failure> {
    let mut rasters: Vec<EventRaster<R>> = Vec::new();
    for text in texts {
        let (chance, path) = chance_and_path(option, text)?;
        let raster = open(&path).map_err(Failure::input)?;
        rasters.push(EventRaster { chance, raster });
    }
    Ok(rasters)
}

/// `1%=wse.tif` in its parts.
pub(super) fn chance_and_path(
    option: &str,
    text: &str,
) -> Result<(AnnualChance, PathBuf), Failure> {
    let stated = Stated::new(
        "raster",
        text,
        Place::Option(format!("option {option}").into()),
    );
    let accepted = "an annual chance and a file, such as 1%=wse.tif";
    let (chance, path) = text.split_once('=').ok_or_else(|| {
        Failure::input(stated.refuse("it has no = between chance and file", accepted))
    })?;
    let chance = parse_annual_chance(chance)
        .map_err(|error| Failure::input(stated.refuse(error.problem(), accepted)))?;
    Ok((chance, PathBuf::from(path)))
}

/// The flood-level lines and the cross-sections around a site.
fn level_lines(
    lines: &LineOptions,
    sections: &SectionOptions,
    location: Option<Location>,
) -> Result<Vec<LevelLineMap>, Failure> {
    let of_lines = LineStatement {
        unit: lines.lines_unit,
        datum: lines.lines_datum,
        crs: lines.lines_crs.clone(),
        level_attribute: lines.lines_level.clone(),
        watercourse_attribute: lines.lines_watercourse.clone(),
        label_attribute: None,
    };
    let of_sections = LineStatement {
        unit: sections.sections_unit,
        datum: sections.sections_datum,
        crs: sections.sections_crs.clone(),
        level_attribute: sections.sections_level.clone(),
        watercourse_attribute: sections.sections_watercourse.clone(),
        label_attribute: None,
    };
    let around = location.map(|location| Part::Around {
        location,
        margin: LevelLineMap::search_limit(),
    });
    let of_sections = sections
        .sections
        .iter()
        .map(|text| (LineKind::CrossSections, text, &of_sections));
    let of_lines = lines
        .lines
        .iter()
        .map(|text| (LineKind::LevelLines, text, &of_lines));
    of_sections
        .chain(of_lines)
        .map(|(kind, text, statement)| {
            let source = LayerPath::split(text);
            read_level_lines(
                kind,
                &source.path,
                source.layer.as_deref(),
                statement,
                around,
            )
            .map_err(Failure::input)
        })
        .collect()
}

/// What the options state of the terrain.
pub(super) fn dem_statement(options: &DemOptions) -> DemStatement {
    DemStatement {
        unit: options.dem_unit,
        datum: options.dem_datum,
        crs: options.dem_crs.clone(),
    }
}

/// The terrain, which has to reach the site where there is one.
pub(super) fn terrain(
    options: &DemOptions,
    location: Option<Location>,
) -> Result<Terrain, Failure> {
    let statement = dem_statement(options);
    let dems = options
        .dem
        .iter()
        .map(|path| Dem::open(path, &statement))
        .collect::<Result<Vec<_>, _>>()
        .map_err(Failure::input)?;
    let terrain = Terrain::new(dems);
    if let Some(location) = location {
        terrain.require_reach(location).map_err(Failure::input)?;
    }
    Ok(terrain)
}

/// The files that maps are read from.
pub(super) fn files(options: &MapOptions) -> Vec<PathBuf> {
    let named = named_files(options).into_iter();
    named.map(|(_, path)| path).collect()
}

/// The files that maps are read from, each with what it is read for.
pub(super) fn named_files(options: &MapOptions) -> Vec<(&'static str, PathBuf)> {
    let layers = |role: &'static str, texts: &[String]| {
        let paths = texts.iter().map(|text| LayerPath::split(text).path);
        paths.map(|path| (role, path)).collect::<Vec<_>>()
    };
    let rasters = |role: &'static str, texts: &[String]| {
        let paths = texts.iter().filter_map(|text| text.split_once('='));
        paths
            .map(|(_, path)| (role, PathBuf::from(path)))
            .collect::<Vec<_>>()
    };
    let schema = PathBuf::from(&options.zones.zones_schema);
    let schema = schema.is_file().then_some(("zone schema", schema));
    let mut named = layers("flood zones", &options.zones.zones);
    named.extend(schema);
    named.extend(rasters("water surface", &options.rasters.surface));
    named.extend(rasters("water depth", &options.rasters.depth));
    named.extend(layers("cross-sections", &options.sections.sections));
    named.extend(layers("flood-level lines", &options.lines.lines));
    let terrain = options.dem.dem.iter().cloned();
    named.extend(terrain.map(|path| ("terrain", path)));
    named
}
