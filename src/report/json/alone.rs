//! One barrier alone, as `sillmark barrier` gives it.

use schemars::JsonSchema;
use serde::Serialize;

use super::number::metres;
use super::trail::JsonStep;
use super::verdict::{JsonCaution, JsonVerdict};
use super::{JsonBarrier, JsonBehind};
use crate::assess::BarrierAssessment;
use crate::verdict::{CautionTexts, Reason};

/// One barrier for a stated height and depth of water.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(title = "sillmark barrier", deny_unknown_fields)]
pub struct JsonBarrierReport {
    /// Version of this schema.
    schema: u32,
    /// The program that wrote it.
    software: String,
    /// Clear width of the opening, or length of the run.
    width_m: f64,
    /// Height over the sill that the barrier has to reach.
    height_m: f64,
    /// Depth of the water over the sill at the design level.
    depth_m: f64,
    /// Id of the kit.
    kit: String,
    /// Id of the set of load factors.
    combination: String,
    /// Null where no plank is needed.
    barrier: Option<JsonBarrier>,
    behind: Option<JsonBehind>,
    verdict: JsonVerdict,
    /// Sentences, the weightiest first.
    reasons: Vec<String>,
    cautions: Vec<JsonCaution>,
    trail: Vec<JsonStep>,
}

/// One barrier as indented JSON with a line break at its end.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn barrier_json(
    assessment: &BarrierAssessment,
    texts: &CautionTexts,
) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&JsonBarrierReport::new(assessment, texts))?;
    text.push('\n');
    Ok(text)
}

/// The JSON Schema of [`JsonBarrierReport`], indented.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn barrier_json_schema() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schemars::schema_for!(JsonBarrierReport))?;
    text.push('\n');
    Ok(text)
}

impl JsonBarrierReport {
    fn new(assessment: &BarrierAssessment, texts: &CautionTexts) -> Self {
        let units = assessment.method.units;
        let question = &assessment.question;
        Self {
            schema: 1,
            software: concat!("sillmark ", env!("CARGO_PKG_VERSION")).to_owned(),
            width_m: metres(question.width),
            height_m: metres(question.height),
            depth_m: metres(question.depth),
            kit: assessment.method.kit.id.clone(),
            combination: assessment.method.rules.combination.id.clone(),
            barrier: assessment
                .barrier
                .as_ref()
                .map(|barrier| JsonBarrier::of(barrier, units)),
            behind: assessment.behind.as_ref().map(JsonBehind::of),
            verdict: JsonVerdict::from(assessment.verdict),
            reasons: assessment
                .reasons
                .iter()
                .map(|reason: &Reason| reason.text(units))
                .collect(),
            cautions: JsonCaution::all(&assessment.cautions, texts, units),
            trail: assessment.trail.steps().iter().map(JsonStep::new).collect(),
        }
    }
}
