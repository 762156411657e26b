//! The load of the water, part by part and plank by plank.

use schemars::JsonSchema;
use serde::Serialize;

use super::checks::JsonCase;
use crate::barrier::{BarrierDesign, CaseLoad, PlankLoad};
use crate::load::{BreakingWave, Impact, LoadPart};
use crate::quantity::Length;
use crate::quantity::unit::{newton, pascal};
use crate::report::json::number::{metres, newtons, newtons_per_metre, rounded};
use crate::report::parts::parts;

/// The load on the barrier between its sill and its top.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonCaseLoad {
    case: JsonCase,
    /// Of the water over the sill.
    depth_m: f64,
    /// What presses at the same time; their forces add up.
    parts: Vec<JsonLoadPart>,
    /// Force of all parts on each metre of width.
    force_n_per_m: f64,
    /// Height over the sill at which it acts.
    height_m: f64,
    /// Moment about the sill on each metre of width (N·m/m).
    moment_n: f64,
    greatest_pressure_pa: f64,
    /// What is not in the load, and why.
    not_included: Vec<JsonNotIncluded>,
    /// The breaking wave as the code has it; null where none is in the load.
    breaking_wave: Option<JsonWave>,
    /// Debris, which strikes one place at a time on top of the water.
    impact: Option<JsonImpact>,
    /// From the sill up.
    planks: Vec<JsonPlankLoad>,
    /// Where the parts stand.
    references: Vec<JsonLoadReference>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonLoadPart {
    part: JsonPart,
    force_n_per_m: f64,
    /// Height over the sill at which it acts.
    height_m: f64,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonPart {
    StillWater,
    ExtraLoadDepth,
    FlowingWater,
    SaturatedSoil,
    BreakingWaves,
    Debris,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonNotIncluded {
    part: JsonPart,
    reason: String,
}

/// A breaking wave on the whole wall from the ground to the crest, 1.1·Cp·γ·d² + 2.4·γ·d² at
/// the stillwater surface. The parts of the load have its pressures between sill and top.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonWave {
    /// Cp by risk category.
    pressure_coefficient: f64,
    /// d, over the ground.
    stillwater_depth_m: f64,
    force_n_per_m: f64,
    /// Height over the sill at which the code lets it act.
    height_m: f64,
    /// Moment about the sill on each metre of width (N·m/m).
    moment_n: f64,
    /// Height of the crest over the sill.
    crest_m: f64,
}

/// The force of debris: on a patch of a width, or along the whole barrier.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonImpact {
    /// On the patch; null where it strikes along the barrier.
    force_n: Option<f64>,
    /// Along the barrier; null where it strikes a patch.
    force_n_per_m: Option<f64>,
    /// Of the patch.
    width_m: Option<f64>,
    height_m: f64,
}

/// The load on one plank.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonPlankLoad {
    /// Counted from the sill.
    plank: u32,
    from_m: f64,
    to_m: f64,
    /// Water, and debris that strikes along the barrier.
    force_n_per_m: f64,
    /// The blow of debris that strikes a patch.
    blow_n: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonLoadReference {
    part: JsonPart,
    reference: String,
}

impl JsonCaseLoad {
    pub(super) fn of(load: &CaseLoad, design: &BarrierDesign) -> Self {
        let (water, stack) = (&load.water, design.stack);
        let resultant = load.on_barrier.resultant();
        let cover = stack.height / f64::from(stack.count);
        Self {
            case: JsonCase::of(load.case),
            depth_m: metres(load.depth),
            parts: parts(load, stack.height)
                .map(|(part, resultant)| JsonLoadPart {
                    part: JsonPart::of(part),
                    force_n_per_m: newtons_per_metre(resultant.force),
                    height_m: metres(resultant.height),
                })
                .collect(),
            force_n_per_m: newtons_per_metre(resultant.force),
            height_m: metres(resultant.height),
            moment_n: rounded(resultant.moment.get::<newton>()),
            greatest_pressure_pa: rounded(load.on_barrier.greatest().0.get::<pascal>()),
            not_included: water
                .not_included
                .iter()
                .map(|absent| JsonNotIncluded {
                    part: JsonPart::of(absent.part),
                    reason: absent.reason.to_owned(),
                })
                .collect(),
            breaking_wave: water.breaking_wave.as_ref().map(JsonWave::of),
            impact: water.impact.as_ref().map(JsonImpact::of),
            planks: (1..=stack.count)
                .map(|plank| {
                    let (from, to) = (cover * f64::from(plank - 1), cover * f64::from(plank));
                    JsonPlankLoad::of(plank, from, to, load.on_plank(from, to))
                })
                .collect(),
            references: water
                .references
                .iter()
                .map(|reference| JsonLoadReference {
                    part: JsonPart::of(reference.part),
                    reference: reference.citation.to_string(),
                })
                .collect(),
        }
    }
}

impl JsonWave {
    fn of(wave: &BreakingWave) -> Self {
        let resultant = wave.code_resultant();
        Self {
            pressure_coefficient: wave.category.wave_pressure_coefficient(),
            stillwater_depth_m: metres(wave.stillwater_depth),
            force_n_per_m: newtons_per_metre(resultant.force),
            height_m: metres(resultant.height),
            moment_n: rounded(resultant.moment.get::<newton>()),
            crest_m: metres(wave.crest()),
        }
    }
}

impl JsonPart {
    fn of(part: LoadPart) -> Self {
        match part {
            LoadPart::StillWater => Self::StillWater,
            LoadPart::ExtraDepth => Self::ExtraLoadDepth,
            LoadPart::Flow => Self::FlowingWater,
            LoadPart::Soil => Self::SaturatedSoil,
            LoadPart::Wave => Self::BreakingWaves,
            LoadPart::Debris => Self::Debris,
        }
    }
}

impl JsonImpact {
    fn of(impact: &Impact) -> Self {
        match impact {
            Impact::Patch {
                force,
                width,
                height,
            } => Self {
                force_n: Some(newtons(*force)),
                force_n_per_m: None,
                width_m: Some(metres(*width)),
                height_m: metres(*height),
            },
            Impact::Strip { force, height } => Self {
                force_n: None,
                force_n_per_m: Some(newtons_per_metre(*force)),
                width_m: None,
                height_m: metres(*height),
            },
        }
    }
}

impl JsonPlankLoad {
    fn of(plank: u32, from: Length, to: Length, load: PlankLoad) -> Self {
        Self {
            plank,
            from_m: metres(from),
            to_m: metres(to),
            force_n_per_m: newtons_per_metre(load.water),
            blow_n: load.blow.map(|blow| newtons(blow.force)),
        }
    }
}
