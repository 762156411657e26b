//! What an elevation shows, whoever found it out.

use crate::assess::{Assessment, OpeningAssessment, Place};
use crate::barrier::{BarrierDesign, Kit, PlankStack};
use crate::quantity::{Elevation, Length, UnitSystem};
use crate::verdict::{GroundSource, MapStatement};

/// An opening with its levels and its barrier. Heights are over the sill.
pub(super) struct Subject<'a> {
    pub(super) name: &'a str,
    pub(super) units: UnitSystem,
    /// Clear width; of a barrier around a corner the legs tell its length.
    pub(super) width: Option<Length>,
    /// Legs of a barrier that goes around corners; empty for a straight one.
    pub(super) legs: &'a [Length],
    /// Clear height.
    pub(super) head: Option<Length>,
    /// Depth of the water.
    pub(super) depth: Option<Length>,
    pub(super) protection: Option<Length>,
    pub(super) stack: Option<PlankStack>,
    pub(super) design: Option<&'a BarrierDesign>,
    pub(super) kit: &'a Kit,
    /// Levels, the highest first; the sill among them.
    pub(super) marks: Vec<Mark>,
    /// What is not known, as sentences.
    pub(super) unknown: Vec<String>,
}

/// A level.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Mark {
    pub(super) level: Level,
    pub(super) height: Length,
    /// Two standard deviations, where they are known.
    pub(super) band: Option<Length>,
    pub(super) name: String,
    /// The elevation with unit and datum; of a barrier alone, its height.
    pub(super) value: String,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Level {
    Ground,
    Sill,
    Flood,
    Design,
    Top,
}

impl<'a> Subject<'a> {
    /// The lengths of the legs, for a sentence.
    pub(super) fn legs_in_words(&self) -> String {
        let legs = self.legs.iter();
        let legs: Vec<String> = legs.map(|leg| self.units.dimension(*leg)).collect();
        legs.join(", ")
    }

    /// `None` where no sill is known.
    pub(super) fn of_opening(
        assessment: &'a Assessment<'_>,
        assessed: &'a OpeningAssessment<'_>,
    ) -> Option<Self> {
        let sill = assessed.sill?;
        let place = assessed.place.as_deref().unwrap_or(&assessment.place);
        let opening = assessed.opening;
        let stack = assessed.planks.filter(|planks| planks.count > 0);
        let mut subject = Self {
            name: &opening.id,
            units: assessment.method.units,
            width: opening.width,
            legs: if opening.run.len() > 1 {
                &opening.run
            } else {
                &[]
            },
            head: opening.height,
            depth: assessed.depth,
            protection: assessed.protection_height,
            stack,
            design: assessed.barrier.as_ref().map(|barrier| &barrier.design),
            kit: &assessment.method.kit,
            marks: Vec::new(),
            unknown: Vec::new(),
        };
        subject.take_ground(place, sill);
        subject.mark(Level::Sill, "sill", Some(sill), sill);
        subject.take_water(place, sill);
        if let Some(stack) = stack {
            let top = sill.raised(stack.height);
            subject.mark(Level::Top, "top of the barrier", Some(top), sill);
        }
        subject
            .marks
            .sort_by(|one, other| other.height.value.total_cmp(&one.height.value));
        Some(subject)
    }

    fn take_ground(&mut self, place: &Place<'_>, sill: Elevation) {
        if let Some(lowest) = place.lowest_ground {
            let name = match lowest.source {
                GroundSource::Surveyed => "lowest ground",
                GroundSource::Terrain => "ground, by terrain",
            };
            self.mark(Level::Ground, name, Some(lowest.elevation), sill);
        } else {
            self.mark(Level::Ground, "ground", place.ground.elevation(), sill);
        }
    }

    fn take_water(&mut self, place: &Place<'_>, sill: Elevation) {
        match &place.flood_level {
            Some(level) => {
                let decided = &level.decided;
                self.mark(Level::Flood, "flood level", Some(decided.elevation), sill);
                let two = decided.sd.map(|sd| sd * 2.0);
                if let (Some(mark), Some(two)) = (self.marks.last_mut(), two)
                    && mark.level == Level::Flood
                {
                    mark.band = Some(two);
                    mark.name = format!("flood level ± {}", self.units.height(two));
                }
            }
            None => self.unknown.push(match &place.statement {
                MapStatement::NoFlood(zone) => {
                    format!("By the map (zone {zone}) the assessed flood does not reach here.")
                }
                _ => "The flood level is not known.".to_owned(),
            }),
        }
        let design = place.design_level.as_ref().map(|level| level.elevation);
        match (design, &place.statement) {
            (None, MapStatement::NoFlood(_)) => {}
            _ => self.mark(Level::Design, "design level", design, sill),
        }
    }

    /// Adds a level, or says that it is not known.
    fn mark(&mut self, level: Level, name: &str, at: Option<Elevation>, sill: Elevation) {
        let Some(at) = at else {
            self.unknown.push(format!("The {name} is not known."));
            return;
        };
        match at.above(sill) {
            Ok(height) => self.marks.push(Mark {
                level,
                height,
                band: None,
                name: name.to_owned(),
                value: self.units.elevation(at),
            }),
            Err(error) => self
                .unknown
                .push(format!("The {name} is not drawn: {error}.")),
        }
    }

    /// Height of a level over the sill, where it is known.
    pub(super) fn height_of(&self, level: Level) -> Option<Length> {
        let mut marks = self.marks.iter();
        marks
            .find(|mark| mark.level == level)
            .map(|mark| mark.height)
    }
}
