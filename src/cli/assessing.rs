//! What an assessment of one building is made with, for the commands that make one.

use std::path::Path;

use sillmark::assess::{Assessment, Detail, Method, Sources, assess};
use sillmark::hazard::Part;
use sillmark::quantity::{Length, UnitSystem};
use sillmark::site::Site;
use sillmark::surroundings::Surroundings;

use super::arguments::{MapOptions, MethodOptions};
use super::brought::{Brought, GroundAsked};
use super::failure::Failure;
use super::inputs;
use super::method::{OfSite, method};

/// The maps around a site, and how it is assessed.
pub(super) struct Assessing {
    pub(super) sources: Sources,
    pub(super) method: Method,
    /// Holds the files that the sources read.
    pub(super) brought: Brought,
}

/// Whether a result draws what lies around the site, for which more of the terrain is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Drawn {
    No,
    Yes,
}

impl Drawn {
    fn reach(self, site: &Site, maps: &MapOptions) -> Length {
        let has_lines = !maps.lines.lines.is_empty() || !maps.sections.sections.is_empty();
        match self {
            Self::No => Length::default(),
            Self::Yes => Surroundings::farthest_reach(site, has_lines),
        }
    }
}

impl Assessing {
    /// Brings the maps around a site onto the disk where services hold them, opens them, and
    /// reads what the site's file and the options say of the method.
    pub(super) fn of(
        site: &Site,
        maps: &MapOptions,
        options: &MethodOptions,
        units: UnitSystem,
        drawn: Drawn,
    ) -> Result<Self, Failure> {
        let of_site = OfSite {
            rule: site.rule.as_ref(),
            loads: site.conditions.loads.clone(),
            uncertainty: site.uncertainty.clone(),
        };
        let method = method(options, &maps.dem, &of_site, units, Detail::Full)?;
        sillmark::gis::start();
        let mut brought = Brought::around(maps, site.location)?;
        let sources = sources(&mut brought, site, &method, drawn.reach(site, maps));
        Ok(Self {
            sources: sources.map_err(|failure| brought.in_their_words(&failure))?,
            method,
            brought,
        })
    }
}

impl Assessing {
    /// Assesses the site.
    pub(super) fn assess<'a>(&'a self, site: &'a Site) -> Result<Assessment<'a>, Failure> {
        let assessed = assess(site, &self.sources, &self.method);
        assessed.map_err(|error| self.brought.in_their_words(&Failure::input(error)))
    }
}

/// Opens the maps around a site; the zones first, because they tell where the terrain is asked.
fn sources(
    brought: &mut Brought,
    site: &Site,
    method: &Method,
    drawn: Length,
) -> Result<Sources, Failure> {
    let zones = inputs::zones(&brought.maps.zones, Some(Part::around(site.location)))?;
    let asked = GroundAsked {
        site,
        zones: &zones,
        event: method.event,
        grade_radius: method.grade_radius,
        drawn,
    };
    brought.terrain(&|cell| asked.places(cell))?;
    let maps = &brought.maps;
    let mut offsets = site.datum_offsets.clone();
    offsets.extend(inputs::datum_offsets(&maps.offsets.datum_offset)?);
    Ok(Sources {
        datums: inputs::datums(&maps.datums, offsets)?,
        zones,
        levels: inputs::levels(maps, Some(site.location))?,
        terrain: inputs::terrain(&maps.dem, Some(site.location))?,
    })
}

/// The site of a file.
pub(super) fn site_of_file(path: &Path) -> Result<Site, Failure> {
    let text = inputs::text_file(path, "a site file (TOML in UTF-8)")?;
    Site::from_toml(&path.display().to_string(), &text).map_err(Failure::input)
}
