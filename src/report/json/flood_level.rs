//! The flood level, the other sources, and the curve of several floods.

use schemars::JsonSchema;
use serde::Serialize;

use super::number::{metres, rounded};
use crate::assess::Place;
use crate::level::{Candidate, FloodLevel, LevelSource};

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonFloodLevel {
    pub(super) value_m: f64,
    pub(super) sd_m: Option<f64>,
    pub(super) source: LevelSource,
    /// As a fraction: 0.01 for one percent.
    pub(super) annual_chance: f64,
    /// Sources with less authority.
    pub(super) others: Vec<JsonOtherLevel>,
    /// Levels of several floods, the most frequent first; empty where one at most is known.
    pub(super) curve: Vec<JsonStage>,
}

/// The level of one flood.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonStage {
    pub(super) annual_chance: f64,
    pub(super) value_m: f64,
    pub(super) sd_m: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonOtherLevel {
    pub(super) source: LevelSource,
    pub(super) value_m: f64,
    pub(super) sd_m: Option<f64>,
}

impl JsonFloodLevel {
    pub(super) fn new(level: &FloodLevel, place: &Place<'_>) -> Self {
        let decided = &level.decided;
        Self {
            value_m: metres(decided.elevation.height()),
            sd_m: decided.sd.map(metres),
            source: decided.source,
            annual_chance: rounded(decided.chance.probability()),
            others: level
                .others
                .iter()
                .map(
                    |Candidate {
                         source,
                         elevation,
                         sd,
                         ..
                     }| JsonOtherLevel {
                        source: *source,
                        value_m: metres(elevation.height()),
                        sd_m: sd.map(metres),
                    },
                )
                .collect(),
            curve: place
                .curve
                .iter()
                .flat_map(|curve| curve.stages.levels())
                .map(|level| JsonStage {
                    annual_chance: rounded(level.chance.probability()),
                    value_m: metres(level.elevation.height()),
                    sd_m: level.sd.map(metres),
                })
                .collect(),
        }
    }
}
