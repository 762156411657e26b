//! What every comparison needs at hand.

use super::shifts::Shifted;
use super::{Contribution, Shifts, Tolerance};
use crate::assess::{Assessment, Place};
use crate::design::{Base, FloodEvent};
use crate::hazard::ZoneClass;
use crate::proposal::Proposal;
use crate::quantity::{Elevation, Length, UnitSystem, VerticalDatum};
use crate::statement::Written;
use crate::verdict::{MapStatement, Reason};

/// Standard deviation of what is rounded to a millimetre, metres.
const MILLIMETRE: f64 = 0.000_3;

/// An assessment and a proposal side by side.
#[derive(Clone, Copy)]
pub(super) struct Desk<'a> {
    pub(super) assessment: &'a Assessment<'a>,
    pub(super) proposal: &'a Proposal,
    pub(super) shifts: &'a Shifts,
}

/// A level of the proposal: stated, or what its own figures come to.
pub(super) struct TheirLevel {
    /// On our datum.
    pub(super) on_ours: Shifted,
    /// As it stands in the proposal.
    pub(super) stated: Elevation,
    /// The text; empty where it follows from other figures.
    pub(super) text: String,
    /// Standard deviation of the rounding of its figures, metres.
    pub(super) rounding: f64,
}

impl Desk<'_> {
    pub(super) fn units(&self) -> UnitSystem {
        self.assessment.method.units
    }

    /// The datum of the assessment.
    pub(super) fn datum(&self) -> VerticalDatum {
        self.assessment.site.threshold.datum()
    }

    /// A stated elevation on our datum; what is missing where its shift is not known.
    pub(super) fn level(&self, written: &Written<Elevation>) -> Result<TheirLevel, String> {
        Ok(TheirLevel {
            on_ours: self.shifts.convert(written.value, self.datum())?,
            stated: written.value,
            text: written.text.clone(),
            rounding: written.rounding_sd(),
        })
    }

    /// The proposed design level: as stated, else flood level and freeboard where both are.
    pub(super) fn their_design(&self) -> Option<Result<TheirLevel, String>> {
        if let Some(written) = &self.proposal.design_level {
            return Some(self.level(written));
        }
        let flood = self.proposal.flood_level.as_ref()?;
        let freeboard = self.proposal.freeboard.as_ref()?;
        Some(self.level(flood).map(|level| TheirLevel {
            on_ours: Shifted {
                elevation: level.on_ours.elevation.raised(freeboard.value),
                by: level.on_ours.by,
            },
            stated: level.stated.raised(freeboard.value),
            text: String::new(),
            rounding: level.rounding,
        }))
    }

    /// Standard deviation of the level that the design level of a place starts from.
    pub(super) fn design_sd(&self, place: &Place<'_>) -> Option<f64> {
        let governing = place.design_level.as_ref()?.governing;
        let sd = match governing {
            Base::FloodLevel => place.flood_level.as_ref()?.decided.sd,
            Base::Event(event) => self.sd_of_event(place, event),
        };
        sd.map(|sd| sd.value)
    }

    fn sd_of_event(&self, place: &Place<'_>, event: FloodEvent) -> Option<Length> {
        let stated = &self.assessment.site.flood_levels;
        let stated = stated.iter().find(|level| level.event.same_event(event));
        if let Some(level) = stated {
            return level.sd;
        }
        let stages = place.curve.as_ref()?.stages.levels();
        stages
            .iter()
            .find(|level| FloodEvent::Chance(level.chance).same_event(event))?
            .sd
    }

    /// Standard deviation of our sills. That of an estimate from the ground has the terrain's.
    pub(super) fn sill_sd(&self) -> Option<f64> {
        let uncertainty = &self.assessment.method.uncertainty;
        if self.assessment.site.threshold.is_estimate() {
            let terrain = uncertainty.terrain_sd()?;
            Some(uncertainty.estimated.sd.value.hypot(terrain.value))
        } else {
            Some(uncertainty.sill.sd.value)
        }
    }

    /// Tolerance of a figure that is chosen, not measured: exact, but for one that was converted
    /// from other units than the site's or is written to a millimetre.
    pub(super) fn of_chosen(&self, written: &Written<Length>) -> Tolerance {
        let exact = Tolerance::default().and_foot(written.value.value);
        let rounding = written.rounding_sd();
        let converted = UnitSystem::of_text(&written.text) != self.assessment.site.units;
        if converted || rounding <= MILLIMETRE {
            exact.and(Contribution::LastDigit, Some(rounding))
        } else {
            exact
        }
    }

    /// Why a place has no design level.
    pub(super) fn no_design_level(&self, place: &Place<'_>) -> String {
        match &place.statement {
            MapStatement::DesignLevel(_) => String::new(),
            MapStatement::NoFlood(zone) => {
                format!("a flood level of ours: the map has no such flood there (zone {zone})")
            }
            MapStatement::Unresolved(missing) => format!(
                "a flood level of ours: {}",
                Reason::Missing(missing.clone()).text(self.units())
            ),
        }
    }
}

impl TheirLevel {
    /// Its tolerance against a level of ours with its standard deviation.
    pub(super) fn tolerance(&self, (of, sd): (Contribution, Option<f64>)) -> Tolerance {
        let tolerance = Tolerance::default()
            .and(of, sd)
            .and(Contribution::LastDigit, Some(self.rounding))
            .and_foot(self.stated.height().value);
        match &self.on_ours.by {
            Some(shift) => tolerance.and(Contribution::DatumShift, shift.sd.map(|sd| sd.value)),
            None => tolerance,
        }
    }
}

/// Whether a map has a coastal high-hazard zone, where waves break, at a place.
pub(super) fn is_coastal_high_hazard(place: &Place<'_>) -> bool {
    place.zone.as_ref().is_some_and(|here| {
        std::iter::once(&here.worst)
            .chain(&here.others)
            .any(|zone| zone.class == ZoneClass::CoastalWave)
    })
}
