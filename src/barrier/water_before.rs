//! From what is stated of the water to the case that a barrier is designed for.

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

    /// The case of water.
    ///
    /// Water is taken as fresh where nobody states its salinity. Without ground, the water is
    /// taken to begin at the sill: still water and flow on the barrier are the same, but waves
    /// depend on the depth over the ground and are then left out and listed.
    #[must_use]
    pub fn case(&self, conditions: &Conditions) -> WaterCase {
        WaterCase {
            depth: self.depth,
            sill_above_ground: self.sill_above_ground.unwrap_or_default(),
            salinity: conditions.water.salinity.unwrap_or(Salinity::Fresh),
            velocity: self.velocity,
            head_coefficient: LEAST_HEAD_COEFFICIENT,
            wall_width: conditions.water.wall_width,
            waves: self.waves(conditions),
            extra_load_depth: conditions.loads.extra_depth,
            debris: conditions.loads.debris,
            impact: ImpactMethod::default(),
            soil: self.soil,
        }
    }

    fn waves(&self, conditions: &Conditions) -> Option<WaveAction> {
        let level = match (self.coastal, conditions.water.waves) {
            (Some(level), _) => level,
            (None, Some(Waves::Breaking)) => WaveLevel::Stillwater,
            (None, Some(Waves::NonBreaking)) => return Some(WaveAction::NonBreaking),
            (None, Some(Waves::None)) => return Some(WaveAction::None),
            (None, None) => return None,
        };
        let missing = match (conditions.loads.risk_category, self.sill_above_ground) {
            (Some(category), Some(_)) => {
                return Some(WaveAction::Breaking(BreakingWaves {
                    category,
                    level,
                    behind: Behind::Dry,
                }));
            }
            (None, Some(_)) => {
                "their load depends on the risk category of the building ([loads] risk_category), which is not stated"
            }
            (Some(_), None) => {
                "their load depends on the ground before the wall (surveyed, or of a terrain model), which is not known"
            }
            (None, None) => {
                "their load depends on the risk category of the building ([loads] risk_category) and the ground before the wall (surveyed, or of a terrain model), which are not known"
            }
        };
        Some(WaveAction::BreakingWithout { missing })
    }
}
