//! Buildings to draw.
#![allow(clippy::unwrap_used)]

use std::path::Path;

use crate::assess::{Assessment, Detail, Method, Sources, Uncertainty, assess};
use crate::barrier::{DesignRules, Kit};
use crate::crs::{DatumSettings, Datums};
use crate::design::rules;
use crate::hazard::{ZoneStatement, read_zones};
use crate::level::LevelMaps;
use crate::load::LoadZone;
use crate::quantity::unit::{Length, meter};
use crate::quantity::{AnnualChance, UnitSystem};
use crate::site::Site;
use crate::terrain::{Dem, DemStatement, Terrain};
use crate::verdict::Limits;

/// The demonstration building on its maps.
pub(super) fn alder_lock(units: UnitSystem) -> Assessment<'static> {
    let folder = Path::new("examples/alder-lock");
    let text = std::fs::read_to_string(folder.join("site.toml")).unwrap();
    let statement = ZoneStatement::default();
    let zones = read_zones(&folder.join("zones.geojson"), None, &statement, None).unwrap();
    let dem = Dem::open(&folder.join("terrain.tif"), &DemStatement::default()).unwrap();
    let site = Site::from_toml("site.toml", &text).unwrap();
    assessed(site, vec![zones], Terrain::new(vec![dem]), units)
}

/// Where the building of [`stated`] stands, with levels of three floods.
pub(super) const FLOODS: &str = r#"
lowest_adjacent_grade = "8.5 ft NAVD88"
rule = "us-nfip-floodproofing"
[[flood_level]]
event = "10%"
level = "8.9 ft NAVD88"
source = "study"
[[flood_level]]
event = "1%"
level = "10.4 ft NAVD88"
source = "study"
standard_deviation = "0.3 ft"
[[flood_level]]
event = "0.2%"
level = "11.9 ft NAVD88"
source = "study"
"#;

/// A building without maps: threshold at 9 ft NAVD88, and what `text` states.
pub(super) fn stated(text: &str, units: UnitSystem) -> Assessment<'static> {
    assessed(site(text), Vec::new(), Terrain::new(Vec::new()), units)
}

/// The same, of whose openings nobody stated a width.
pub(super) fn without_width(text: &str, units: UnitSystem) -> Assessment<'static> {
    let mut site = site(text);
    for opening in &mut site.openings {
        opening.width = None;
    }
    assessed(site, Vec::new(), Terrain::new(Vec::new()), units)
}

fn site(text: &str) -> Site {
    let text = format!(
        "name = \"Reed House\"\nlocation = {{ longitude = -74.0, latitude = 40.7 }}\n\
         threshold = \"9 ft NAVD88\"\noccupancy = \"residential\"\n{text}"
    );
    Site::from_toml("site.toml", &text).unwrap()
}

/// The assessment keeps what it borrows for as long as the tests run.
fn assessed(
    site: Site,
    zones: Vec<crate::hazard::ZoneMap>,
    terrain: Terrain,
    units: UnitSystem,
) -> Assessment<'static> {
    let sources = Box::leak(Box::new(Sources {
        zones,
        levels: LevelMaps::default(),
        terrain,
        datums: Datums::new(DatumSettings::default()).unwrap(),
    }));
    assessed_with(site, sources, units)
}

/// The same, with sources that live as long.
pub(super) fn assessed_with(
    site: Site,
    sources: &'static Sources,
    units: UnitSystem,
) -> Assessment<'static> {
    let site: &Site = Box::leak(Box::new(site));
    let kit = Kit::demonstration().unwrap();
    let rule = rules().unwrap().into_iter();
    let method = Box::leak(Box::new(Method {
        rule: rule
            .into_iter()
            .find(|rule| rule.id == "us-nfip-floodproofing")
            .unwrap(),
        rules: DesignRules::of(&kit, &site.conditions.loads, LoadZone::Other).unwrap(),
        kit,
        limits: Limits::shipped().unwrap(),
        event: AnnualChance::ONE_PERCENT,
        grade_radius: Length::new::<meter>(10.0),
        uncertainty: Uncertainty::of(&site.uncertainty, None).unwrap(),
        years: 30,
        units,
        detail: Detail::Full,
    }));
    assess(site, sources, method).unwrap()
}

/// Both systems of units with a short name.
pub(super) const SYSTEMS: [(UnitSystem, &str); 2] =
    [(UnitSystem::Us, "us"), (UnitSystem::Si, "si")];
