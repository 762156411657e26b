//! What maps, terrain and rule say about one place.

use super::study::{Spot, Study};
use super::{Asked, AssessError, Readings, read_place};
use crate::design::DesignLevel;
use crate::hazard::{Zone, ZoneClass};
use crate::level::{Candidate, Curve, FloodLevel};
use crate::quantity::Elevation;
use crate::site::Location;
use crate::terrain::{Gap, Ground};
use crate::verdict::{GroundSource, MapStatement};

/// Everything that is known at one place before an opening is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Place<'maps> {
    /// Where.
    pub location: Location,
    /// The zones there; `None` where no polygon holds the place.
    pub zone: Option<ZoneHere<'maps>>,
    /// Whether there was a zone layer to look the place up in.
    pub zones_given: bool,
    /// The ground there.
    pub ground: GroundAnswer,
    /// The lowest ground around it, and who says so.
    pub lowest_ground: Option<LowestGround>,
    /// The flood level with its ranked sources.
    pub flood_level: Option<FloodLevel>,
    /// The level of the river beside a place that the map puts outside the flood.
    pub beside: Option<Box<Candidate>>,
    /// Levels of several floods as one curve.
    pub curve: Option<Curve>,
    /// What a reader has to know of the levels.
    pub level_remarks: Vec<String>,
    /// The design level with how it came about.
    pub design_level: Option<DesignLevel>,
    /// The design level, that there is no flood by the map, or what is missing.
    pub statement: MapStatement,
}

/// The zones that hold a place.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneHere<'maps> {
    /// The worst of them: it decides.
    pub worst: &'maps Zone,
    /// The others.
    pub others: Vec<&'maps Zone>,
    /// Whether the place lies on an edge.
    pub on_edge: bool,
}

/// The ground at a place, or why it is not known.
#[derive(Clone, Debug, PartialEq)]
pub enum GroundAnswer {
    /// The ground, on the datum of the threshold.
    Known(Ground),
    /// The terrain has no value there or does not reach there.
    Gap(Gap),
    /// No terrain was given.
    NotAsked,
}

impl GroundAnswer {
    /// The ground, where it is known.
    #[must_use]
    pub fn elevation(&self) -> Option<Elevation> {
        match self {
            Self::Known(ground) => Some(ground.elevation),
            Self::Gap(_) | Self::NotAsked => None,
        }
    }
}

/// The lowest ground near the walls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LowestGround {
    /// The ground.
    pub elevation: Elevation,
    /// Who says so.
    pub source: GroundSource,
}

impl<'a> Study<'a> {
    /// Studies one place: reads it, and concludes.
    pub(super) fn place(&mut self, spot: Spot<'_>) -> Result<Place<'a>, AssessError> {
        let outline = self
            .site
            .footprint
            .as_ref()
            .filter(|_| self.is_at_site(spot));
        let asked = Asked {
            location: spot.location,
            outline,
            sill: None,
        };
        let readings = read_place(asked, self.sources, self.method)?;
        self.conclude(spot, readings)
    }

    /// What follows from the readings: ground, flood level, design level.
    pub(super) fn conclude(
        &mut self,
        spot: Spot<'_>,
        readings: Readings<'a>,
    ) -> Result<Place<'a>, AssessError> {
        let Readings {
            zones: here,
            ground,
            grade,
            levels,
        } = readings;
        self.trail_zones(spot, &here);
        let ground = self.ground(spot, ground)?;
        let sheet_flow = here
            .zones
            .iter()
            .any(|zone| zone.class == ZoneClass::SheetFlow);
        let grade = self.grade(spot, grade, sheet_flow)?;
        let answer = self.flood_level(spot, &here, levels, grade.highest.as_ref())?;
        let (statement, design_level) = self.design(spot, &here, &answer)?;
        let zone = here.zones.split_first().map(|(worst, others)| ZoneHere {
            worst,
            others: others.to_vec(),
            on_edge: here.on_edge,
        });
        Ok(Place {
            location: spot.location,
            zone,
            zones_given: !self.sources.zones.is_empty(),
            ground,
            lowest_ground: grade.lowest,
            flood_level: answer.level,
            beside: answer.beside,
            curve: answer.curve,
            level_remarks: answer.remarks,
            design_level,
            statement,
        })
    }
}
