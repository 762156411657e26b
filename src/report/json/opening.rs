//! One opening.

use schemars::JsonSchema;
use serde::Serialize;

use super::barrier::JsonBarrier;
use super::number::{metres, rounded};
use super::place::JsonPlace;
use super::verdict::JsonVerdict;
use crate::assess::{Assessment, OpeningAssessment, YearlyChance};
use crate::barrier::{BarrierDesign, Upright};
use crate::load::Hydrostatic;
use crate::quantity::unit::{in_newtons_per_metre, newton, pascal};
use crate::risk::ChanceAtLevel;
use crate::verdict::Reason;

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonOpening {
    pub(super) id: String,
    /// Null where no opening is known, only a threshold.
    pub(super) width_m: Option<f64>,
    /// Null where nobody has measured it.
    pub(super) sill_m: Option<f64>,
    /// Flood level less sill, not less than nothing.
    pub(super) depth_m: Option<f64>,
    /// Design level less sill, not less than nothing.
    pub(super) protection_height_m: Option<f64>,
    /// Protection height rounded up to whole planks.
    pub(super) barrier_height_m: Option<f64>,
    pub(super) planks: Option<u32>,
    /// Spans between posts; null where there is no barrier.
    pub(super) spans: Option<u32>,
    /// Posts between the end posts, corner posts not counted; null where there is no barrier.
    pub(super) intermediate_posts: Option<u32>,
    /// Pressure at the sill, still water at the design level.
    pub(super) pressure_pa: Option<f64>,
    /// Force on each metre of width, still water at the design level.
    pub(super) force_n_per_m: Option<f64>,
    /// Moment about the sill on each metre of width (N·m/m), still water at the design level.
    pub(super) moment_n: Option<f64>,
    /// Still water at the top of the barrier: the governing case for strength.
    pub(super) at_top: Option<JsonLoad>,
    /// Chance that the assessed event passes the top of the barrier.
    pub(super) chance_over_top: Option<f64>,
    /// How often water reaches the sill; null where levels of one flood at most are known.
    pub(super) water_at_sill: Option<JsonYearlyChance>,
    /// How often water reaches the top of the barrier.
    pub(super) water_at_top: Option<JsonYearlyChance>,
    /// The barrier with its loads, checks and pieces; null where no plank is needed or no
    /// height is known.
    pub(super) barrier: Option<JsonBarrier>,
    pub(super) verdict: JsonVerdict,
    /// Sentences, the weightiest first.
    pub(super) reasons: Vec<String>,
    /// What is known where the opening stands, if that is not where the site is.
    pub(super) place: Option<JsonPlace>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonLoad {
    pub(super) depth_m: f64,
    pub(super) pressure_pa: f64,
    pub(super) force_n_per_m: f64,
    pub(super) moment_n: f64,
}

/// How often water reaches a height.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonYearlyChance {
    /// As a fraction; null where it lies outside the known floods.
    pub(super) annual_chance: Option<f64>,
    /// Such as `rarer than 0.2 %`, where it lies outside the known floods.
    pub(super) beyond: Option<String>,
    /// Years that `over_years` is for.
    pub(super) years: u32,
    /// Chance of at least one such flood over the years.
    pub(super) over_years: Option<f64>,
}

impl JsonOpening {
    pub(super) fn new(opening: &OpeningAssessment<'_>, assessment: &Assessment<'_>) -> Self {
        let design = opening.barrier.as_ref().map(|barrier| &barrier.design);
        let load = opening.at_design_level.as_ref().map(JsonLoad::new);
        Self {
            id: opening.opening.id.clone(),
            width_m: opening.opening.width.map(metres),
            sill_m: opening.sill.map(|sill| metres(sill.height())),
            depth_m: opening.depth.map(metres),
            protection_height_m: opening.protection_height.map(metres),
            barrier_height_m: opening.planks.map(|planks| metres(planks.height)),
            planks: opening.planks.map(|planks| planks.count),
            spans: design.map(BarrierDesign::spans),
            intermediate_posts: design.map(|design| design.count(Upright::Intermediate)),
            pressure_pa: load.as_ref().map(|load| load.pressure_pa),
            force_n_per_m: load.as_ref().map(|load| load.force_n_per_m),
            moment_n: load.as_ref().map(|load| load.moment_n),
            at_top: opening.at_top.as_ref().map(JsonLoad::new),
            chance_over_top: opening.chance_over_top.map(rounded),
            water_at_sill: opening
                .water_at_sill
                .map(|chance| JsonYearlyChance::new(chance, assessment.method.years)),
            water_at_top: opening
                .water_at_top
                .map(|chance| JsonYearlyChance::new(chance, assessment.method.years)),
            barrier: opening
                .barrier
                .as_ref()
                .map(|barrier| JsonBarrier::of(barrier, assessment.method.units)),
            verdict: JsonVerdict::from(opening.verdict),
            reasons: opening
                .reasons
                .iter()
                .map(|reason: &Reason| reason.text(assessment.method.units))
                .collect(),
            place: opening
                .place
                .as_ref()
                .map(|place| JsonPlace::new(place, &assessment.method.rule.id)),
        }
    }
}

impl JsonYearlyChance {
    pub(super) fn new(chance: YearlyChance, years: u32) -> Self {
        let (annual_chance, beyond) = match chance.annual {
            ChanceAtLevel::Known { chance, .. } => (Some(rounded(chance.probability())), None),
            ChanceAtLevel::Beyond(beyond) => (None, Some(beyond.to_string())),
        };
        Self {
            annual_chance,
            beyond,
            years,
            over_years: chance.over_years.map(rounded),
        }
    }
}

impl JsonLoad {
    pub(super) fn new(load: &Hydrostatic) -> Self {
        Self {
            depth_m: metres(load.depth),
            pressure_pa: rounded(load.pressure.get::<pascal>()),
            force_n_per_m: rounded(in_newtons_per_metre(load.force)),
            moment_n: rounded(load.moment.get::<newton>()),
        }
    }
}
