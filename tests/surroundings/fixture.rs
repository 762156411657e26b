//! Assessed sites on made-up maps.

use sillmark::assess::{Assessment, Detail, Method, Sources, Uncertainty, assess};
use sillmark::barrier::{DesignRules, Kit};
use sillmark::crs::{DatumSettings, Datums};
use sillmark::design::rules;
use sillmark::level::LevelMaps;
use sillmark::load::LoadZone;
use sillmark::quantity::unit::{Length, meter};
use sillmark::quantity::{AnnualChance, UnitSystem};
use sillmark::site::{Location, Site};
use sillmark::surroundings::Surroundings;
use sillmark::terrain::{Dem, Terrain};
use sillmark::verdict::Limits;

/// No map at all, and offsets between datums that the user states.
pub(crate) fn sources(settings: DatumSettings) -> Sources {
    Sources {
        zones: Vec::new(),
        levels: LevelMaps::default(),
        terrain: Terrain::default(),
        datums: Datums::new(settings).unwrap(),
    }
}

#[allow(dead_code)] // one of the two binaries has no use for it
pub(crate) fn terrain(dems: Vec<Dem>) -> Sources {
    Sources {
        terrain: Terrain::new(dems),
        ..sources(DatumSettings::default())
    }
}

/// A site at a place with a threshold of 9 m NAVD88, and what `more` states.
#[allow(dead_code)]
pub(crate) fn site(place: Location, more: &str) -> Site {
    let text = format!(
        "name = \"Reed House\"\n\
         location = {{ longitude = {}, latitude = {} }}\n\
         threshold = \"9 m NAVD88\"\noccupancy = \"residential\"\n{more}\n\
         [[opening]]\nid = \"door\"\nwidth = \"36 in\"\n",
        place.longitude(),
        place.latitude()
    );
    Site::from_toml("site.toml", &text).unwrap()
}

/// Assesses the site, reads its surroundings and looks at both.
pub(crate) fn look<T>(
    site: &Site,
    sources: &Sources,
    look: impl FnOnce(&Assessment<'_>, &Surroundings) -> T,
) -> T {
    let kit = Kit::demonstration().unwrap();
    let mut rules = rules().unwrap().into_iter();
    let method = Method {
        rule: rules
            .find(|rule| rule.id == "us-nfip-floodproofing")
            .unwrap(),
        rules: DesignRules::of(&kit, &site.conditions.loads, LoadZone::Other).unwrap(),
        kit,
        limits: Limits::shipped().unwrap(),
        event: AnnualChance::ONE_PERCENT,
        grade_radius: Length::new::<meter>(10.0),
        uncertainty: Uncertainty::of(&site.uncertainty, None).unwrap(),
        years: 30,
        units: UnitSystem::Si,
        detail: Detail::Full,
    };
    let assessment = assess(site, sources, &method).unwrap();
    let surroundings = Surroundings::read(&assessment, sources).unwrap();
    look(&assessment, &surroundings)
}
