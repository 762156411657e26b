//! Assessed sites with what lies around them, to draw.
#![allow(clippy::unwrap_used)]

use std::path::Path;

use super::fixture::assessed_with;
use crate::assess::{Assessment, Sources};
use crate::crs::{DatumSettings, Datums};
use crate::hazard::{ZoneMap, ZoneStatement, read_zones};
use crate::level::LevelMaps;
use crate::quantity::UnitSystem;
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
    let text = std::fs::read_to_string("examples/alder-lock/site.toml").unwrap();
    case(&format!("{text}\n{more}"), alder_lock_maps(), units)
}

pub(in crate::report) fn zones(path: &Path) -> ZoneMap {
    read_zones(path, None, &ZoneStatement::default(), None).unwrap()
}

pub(in crate::report) fn terrain(path: &Path, statement: &DemStatement) -> Terrain {
    Terrain::new(vec![Dem::open(path, statement).unwrap()])
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
