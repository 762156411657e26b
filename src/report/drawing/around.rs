//! Assessed sites with what lies around them, to draw.
#![allow(clippy::unwrap_used)]

use std::path::Path;

use serde_json::json;

use super::fixture::assessed_with;
use crate::assess::{Assessment, Sources};
use crate::crs::{DatumSettings, Datums};
use crate::hazard::{
    LevelLineMap, LineKind, LineStatement, ZoneMap, ZoneStatement, read_level_lines, read_zones,
};
use crate::level::LevelMaps;
use crate::quantity::{LengthUnit, UnitSystem, VerticalDatum};
use crate::site::Site;
use crate::surroundings::Surroundings;
use crate::terrain::{Dem, DemStatement, Terrain};

/// A site, its assessment and its surroundings.
pub(in crate::report) struct Case {
    pub(in crate::report) assessment: Assessment<'static>,
    pub(in crate::report) surroundings: Surroundings,
}

/// Without any map.
pub(in crate::report) fn without_maps() -> Sources {
    Sources {
        zones: Vec::new(),
        levels: LevelMaps::default(),
        terrain: Terrain::default(),
        datums: Datums::new(DatumSettings::default()).unwrap(),
    }
}

/// The maps of the demonstration.
pub(in crate::report) fn alder_lock_maps() -> Sources {
    let folder = Path::new("examples/alder-lock");
    Sources {
        zones: vec![zones(&folder.join("zones.geojson"))],
        terrain: terrain(&folder.join("terrain.tif"), &DemStatement::default()),
        ..without_maps()
    }
}

/// The demonstration building, with more in its site file.
pub(in crate::report) fn alder_lock(units: UnitSystem, more: &str) -> Case {
    let text = format!("{}\n{more}", alder_lock_file());
    case(&text, alder_lock_maps(), units)
}

fn alder_lock_file() -> String {
    std::fs::read_to_string("examples/alder-lock/site.toml").unwrap()
}

pub(in crate::report) fn zones(path: &Path) -> ZoneMap {
    read_zones(path, None, &ZoneStatement::default(), None).unwrap()
}

pub(in crate::report) fn terrain(path: &Path, statement: &DemStatement) -> Terrain {
    Terrain::new(vec![Dem::open(path, statement).unwrap()])
}

/// Lines of a kind with their names, levels in feet of NAVD88, and corners in degrees.
pub(in crate::report) fn lines(kind: LineKind, drawn: &[(&str, f64, &[[f64; 2]])]) -> LevelLineMap {
    let features = drawn.iter().map(|(name, level, corners)| {
        json!({
            "type": "Feature",
            "properties": {"NAME": name, "LEVEL": level},
            "geometry": {"type": "LineString", "coordinates": corners},
        })
    });
    let features: Vec<_> = features.collect();
    let collection = json!({"type": "FeatureCollection", "features": features});
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lines.geojson");
    std::fs::write(&path, collection.to_string()).unwrap();
    let statement = LineStatement {
        unit: Some(LengthUnit::Foot),
        datum: Some(VerticalDatum::Navd88),
        level_attribute: Some("LEVEL".to_owned()),
        label_attribute: Some("NAME".to_owned()),
        ..LineStatement::default()
    };
    read_level_lines(kind, &path, None, &statement, None).unwrap()
}

/// The demonstration's building between two cross-sections, of which one lies two kilometres
/// away, on its terrain and without zones.
pub(in crate::report) fn between_sections(units: UnitSystem) -> Case {
    let near: &[[f64; 2]] = &[[-87.4995, 47.7990], [-87.4980, 47.7990]];
    let far: &[[f64; 2]] = &[[-87.4995, 47.8173], [-87.4980, 47.8173]];
    let drawn = [("B", 613.0, near), ("<C>", 615.0, far)];
    let mut sources = alder_lock_maps();
    sources.zones = Vec::new();
    sources.levels.lines = vec![lines(LineKind::CrossSections, &drawn)];
    case(&alder_lock_file(), sources, units)
}

/// A building of which no map says anything, its names hostile.
pub(in crate::report) fn bare(units: UnitSystem) -> Case {
    let text = "name = \"<script>alert(1)</script>\"\n\
        location = { longitude = -74.0, latitude = 40.7 }\n\
        threshold = \"9 ft NAVD88\"\noccupancy = \"residential\"\n\
        [[opening]]\nid = \"=cmd()\"\nwidth = \"36 in\"\n";
    case(text, without_maps(), units)
}

/// The demonstration's building with forty openings more at the site, of one height each, and
/// forty that stand elsewhere, every third with a name of 200 letters.
pub(in crate::report) fn crowded(units: UnitSystem) -> Case {
    let mut more = String::new();
    for number in 0..40_i32 {
        let long = "</text><b>door</b>".repeat(11);
        let name = if number % 3 == 0 { long } else { String::new() };
        let sill = 610.0 + 0.25 * f64::from(number);
        let east = -87.498_86 + 1e-5 * f64::from(number);
        let opening = |id: &str, place: &str| {
            format!(
                "[[opening]]\nid = \"{id} {number} {name}\"\nkind = \"door\"\n\
                 width = \"36 in\"\nsill = \"{sill} ft NAVD88\"\n{place}"
            )
        };
        more += &opening("here", "");
        let place = format!("location = {{ longitude = {east}, latitude = 47.79936 }}\n");
        more += &opening("there", &place);
    }
    alder_lock(units, &more)
}

/// The case keeps what it borrows for as long as the tests run.
pub(in crate::report) fn case(text: &str, sources: Sources, units: UnitSystem) -> Case {
    let site = Site::from_toml("site.toml", text).unwrap();
    let sources: &Sources = Box::leak(Box::new(sources));
    let assessment = assessed_with(site, sources, units);
    let surroundings = Surroundings::read(&assessment, sources).unwrap();
    Case {
        assessment,
        surroundings,
    }
}
