//! From what is stated of the water to the case that a barrier is designed for.

use super::Open;
use crate::load::{
    Behind, BreakingWaves, ImpactMethod, LEAST_HEAD_COEFFICIENT, LoadZone, Salinity, SoilGroup,
    WaterCase, WaveAction, WaveLevel,
};
use crate::quantity::{Length, Velocity};
use crate::site::{Conditions, Waves};

/// The water before one barrier, as site and maps know it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaterBefore {
    /// Height of the design level over the sill.
    pub depth: Length,
    /// Height of the sill over the ground before it, negative below; `None` where the ground
    /// is not known.
    pub sill_above_ground: Option<Length>,
    /// Speed of the water, the greater of what is stated and what the map has.
    pub velocity: Option<Velocity>,
    /// Whether the map has breaking waves there, and what its level is the level of.
    pub coastal: Option<WaveLevel>,
    /// The soil against an opening below the ground.
    pub soil: Option<SoilGroup>,
}

impl WaterBefore {
    /// The zone that load factors are taken for: coastal where waves break.
    #[must_use]
    pub fn zone(&self, conditions: &Conditions) -> LoadZone {
        match (self.coastal, conditions.water.waves) {
            (Some(_), _) | (None, Some(Waves::Breaking)) => LoadZone::Coastal,
            (None, _) => LoadZone::Other,
        }
    }

    /// The case of water, and what could not be put into it.
    ///
    /// Water is taken as fresh where nobody states its salinity. Without ground, the water is
    /// taken to begin at the sill: still water and flow on the barrier are the same, but waves
    /// depend on the depth over the ground and are then left out and listed.
    #[must_use]
    pub fn case(&self, conditions: &Conditions) -> (WaterCase, Vec<Open>) {
        let mut open = Vec::new();
        let waves = self.waves(conditions, &mut open);
        let case = WaterCase {
            depth: self.depth,
            sill_above_ground: self.sill_above_ground.unwrap_or_default(),
            salinity: conditions.water.salinity.unwrap_or(Salinity::Fresh),
            velocity: self.velocity,
            head_coefficient: LEAST_HEAD_COEFFICIENT,
            wall_width: None,
            waves,
            extra_load_depth: conditions.loads.extra_depth,
            debris: conditions.loads.debris,
            impact: ImpactMethod::default(),
            soil: self.soil,
        };
        (case, open)
    }

    fn waves(&self, conditions: &Conditions, open: &mut Vec<Open>) -> Option<WaveAction> {
        let level = match (self.coastal, conditions.water.waves) {
            (Some(level), _) => level,
            (None, Some(Waves::Breaking)) => WaveLevel::Stillwater,
            (None, Some(Waves::NonBreaking)) => return Some(WaveAction::NonBreaking),
            (None, Some(Waves::None)) => return Some(WaveAction::None),
            (None, None) => return None,
        };
        let mut missing = Vec::new();
        if conditions.loads.risk_category.is_none() {
            missing.push("the risk category of the building ([loads] risk_category)");
        }
        if self.sill_above_ground.is_none() {
            missing.push("the ground before the wall (lowest_adjacent_grade, or a terrain model)");
        }
        match (conditions.loads.risk_category, self.sill_above_ground) {
            (Some(category), Some(_)) => Some(WaveAction::Breaking(BreakingWaves {
                category,
                level,
                behind: Behind::Dry,
            })),
            _ => {
                open.push(Open::LoadNotIncluded {
                    what: format!(
                        "the load of breaking waves is not in the figures; it needs {}",
                        missing.join(" and ")
                    ),
                });
                None
            }
        }
    }
}
