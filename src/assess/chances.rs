//! How likely water is at a height: over the top of a barrier in the assessed flood, and at
//! sill and top in any one year.

use super::study::Study;
use super::{AssessError, Detail, Place, Value};
use crate::quantity::{Elevation, Length};
use crate::risk::{ChanceAtLevel, Deviation, chance_over_top, chance_over_years, root_sum_square};

/// How often water reaches a height, from the curve of level and chance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YearlyChance {
    /// The chance in any one year, or that it lies outside the known floods.
    pub annual: ChanceAtLevel,
    /// Chance of at least one such flood over the years of the method, where it is known.
    pub over_years: Option<f64>,
}

impl<'a> Study<'a> {
    /// Chance that the assessed flood passes a top that stands on a sill; `None` where the
    /// level's standard deviation is not known, and where figures alone are asked for.
    pub(super) fn over_top(
        &mut self,
        place: &Place<'_>,
        sill: Elevation,
        barrier_height: Length,
        whose: &dyn Fn() -> String,
    ) -> Result<Option<f64>, AssessError> {
        if self.method.detail == Detail::Figures {
            return Ok(None);
        }
        let Some(level) = place.flood_level.as_ref().map(|level| &level.decided) else {
            return Ok(None);
        };
        let Some(sd) = level.sd else { return Ok(None) };
        let Some(sill_sd) = self.sill_sd() else {
            return Ok(None);
        };
        let chance = chance_over_top(level.elevation, sd, sill.raised(barrier_height), sill_sd)?;
        let of_sill = self.deviation_of_sill();
        self.trail.note(|trail| {
            trail.add(
                format!("standard deviation of the sill{}", whose()),
                Value::Length(sill_sd),
                format!("{}: {}", of_sill.name, of_sill.covers),
                of_sill.citation.to_string(),
            );
            trail.add(
                format!("chance that the assessed event passes the top{}", whose()),
                Value::Chance(chance),
                "normal distribution about the flood level with the standard deviations of level and sill; not the flood study itself",
                "",
            );
        });
        Ok(Some(chance))
    }

    /// How often water reaches a height, where levels of several floods are known.
    pub(super) fn yearly(
        &mut self,
        place: &Place<'_>,
        height: Elevation,
        what: &dyn Fn() -> String,
    ) -> Result<Option<YearlyChance>, AssessError> {
        let Some(curve) = &place.curve else {
            return Ok(None);
        };
        let annual = curve.stages.chance_at(height)?;
        let years = self.method.years;
        let over_years = match annual {
            ChanceAtLevel::Known { chance, from } => {
                let over_years = chance_over_years(chance, years);
                self.trail.note(|trail| {
                    trail.add(
                        format!("annual chance of water at the {}", what()),
                        Value::Chance(chance.probability()),
                        from.to_string(),
                        curve.reference.clone(),
                    );
                    trail.add(
                        format!("chance of water at the {} over {years} years", what()),
                        Value::Chance(over_years),
                        "1 − (1 − annual chance)^years",
                        "",
                    );
                });
                Some(over_years)
            }
            ChanceAtLevel::Beyond(beyond) => {
                self.trail.note(|trail| {
                    trail.add(
                        format!("annual chance of water at the {}", what()),
                        Value::Words(beyond.to_string()),
                        "outside the floods whose levels are known; nothing is extrapolated",
                        curve.reference.clone(),
                    );
                });
                None
            }
        };
        Ok(Some(YearlyChance { annual, over_years }))
    }

    /// How well sills are known: as measured, or as estimated from the ground.
    fn deviation_of_sill(&self) -> &'a Deviation {
        let uncertainty = &self.method.uncertainty;
        if self.site.threshold.is_estimate() {
            &uncertainty.estimated
        } else {
            &uncertainty.sill
        }
    }

    /// Standard deviation of a sill. Of an estimate from the ground it is that of the height
    /// with that of the terrain; not known where the latter is not.
    fn sill_sd(&self) -> Option<Length> {
        let own = self.deviation_of_sill().sd;
        if self.site.threshold.is_estimate() {
            let terrain = self.method.uncertainty.terrain_sd()?;
            Some(root_sum_square([own, terrain]))
        } else {
            Some(own)
        }
    }
}
