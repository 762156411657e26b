//! What lies around a site: for a plan, a section and a map layer.
//!
//! [`Surroundings::read`] takes a square about the site and gathers in it what the assessment
//! was made from: ground heights, zones, lines of known level. It decides nothing; heights of
//! the ground stand on the datum of the threshold, all other numbers as their layers write
//! them. Positions are metres east (x) and north (y) of the site.

mod error;
mod extent;
mod ground;
mod lines;
mod openings;
mod origin;
mod plane;
mod section;
mod zones;

pub use error::SurroundingsError;
pub use ground::{DatumShift, GroundGrid, RasterUsed};
pub use lines::{LineShape, LineUse};
pub use openings::OpeningPlace;
pub use origin::MapOrigin;
pub use section::{SectionPoint, SiteSection};
pub use zones::ZoneShape;

use geo::Coord;

use crate::assess::{Assessment, Sources};
use crate::hazard::LayerContent;
use crate::quantity::{Length, VerticalDatum, unit::meter};
use crate::site::{Location, Site};
use ground::Terrain;
use plane::Plane;

/// What lies within a square about a site.
#[derive(Clone, Debug, PartialEq)]
pub struct Surroundings {
    /// The site: the middle of the square.
    pub location: Location,
    /// Half the side of the square.
    pub reach: Length,
    /// The datum of ground heights: that of the threshold.
    pub datum: VerticalDatum,
    /// Ground heights; `None` where no terrain was given or it has no value in the square.
    pub ground: Option<GroundGrid>,
    /// The terrain models that were looked at, finest first.
    pub rasters: Vec<RasterUsed>,
    /// The zones within the square, in the order of their layers.
    pub zones: Vec<ZoneShape>,
    /// Lines of known level within the square, and those outside it that a level was read from.
    pub lines: Vec<LineShape>,
    /// The corners of the building's outline; empty where it is not stated.
    pub outline: Vec<Coord<f64>>,
    /// The openings that stand elsewhere than the site.
    pub openings: Vec<OpeningPlace>,
    /// The ground along a line through the site; `None` where there is no ground.
    pub section: Option<SiteSection>,
    /// Where zones and lines come from, zones first.
    pub origins: Vec<MapOrigin>,
}

impl Surroundings {
    /// Whether there is any zone layer, be it far from the site.
    #[must_use]
    pub fn zones_were_given(&self) -> bool {
        let mut origins = self.origins.iter();
        origins.any(|origin| origin.content == LayerContent::Zones)
    }

    /// How far the square about a site may reach, known before it is assessed; lines of known
    /// level may widen it to 1 km.
    #[must_use]
    pub fn farthest_reach(site: &Site, has_lines: bool) -> Length {
        extent::farthest_reach(site, has_lines)
    }

    /// Reads the surroundings of an assessed site from the sources that it was assessed with.
    ///
    /// 1. The square is as large as its contents ask for, see [`Surroundings::reach`]: 120 m to
    ///    each side, more where an opening, the outline or a line that a level was read from
    ///    lies farther away, at most 1 km.
    /// 2. The ground is read at 160 × 160 points.
    /// 3. Zones and lines are cut off at the square.
    /// 4. The section runs towards the water, see [`SiteSection`].
    ///
    /// # Errors
    /// [`SurroundingsError`] where a source cannot be read.
    pub fn read(assessment: &Assessment<'_>, sources: &Sources) -> Result<Self, SurroundingsError> {
        let site = assessment.site;
        let plane = Plane::at(site.location)?;
        let openings = openings::places(assessment, &plane)?;
        let outline = openings::outline(site, &plane)?;
        let used = lines::used(assessment, &sources.levels.lines);
        let reach = extent::reach(&openings, &outline, &used);
        let metres = reach.get::<meter>();
        let terrain = Terrain::new(sources, site);
        let ground = terrain.grid(metres)?;
        let section = match &ground {
            Some(ground) => section::through(&terrain, ground, assessment, sources)?,
            None => None,
        };
        Ok(Self {
            location: site.location,
            reach,
            datum: site.threshold.datum(),
            ground,
            rasters: terrain.used(),
            zones: zones::within(metres, assessment, &sources.zones)?,
            lines: lines::within(metres, site.location, &sources.levels.lines, &used)?,
            outline,
            openings,
            section,
            origins: origin::of(sources),
        })
    }
}
