//! Water that gets past barriers.

use schemars::JsonSchema;
use serde::Serialize;

use crate::inflow::{Inflow, InflowPart, NotCounted, Way};
use crate::quantity::unit::cubic_meter_per_second;
use crate::report::json::number::finely;

/// All ways in together.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::report::json) struct JsonInflow {
    /// Of the ways in that have a number.
    total_m3_per_s: f64,
    /// Whether all of them have; else the total is too small.
    is_complete: bool,
    parts: Vec<JsonInflowPart>,
    /// Ways in without a number.
    not_counted: Vec<JsonNotCounted>,
    /// What nobody stated, and what was done about it.
    not_stated: Vec<String>,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonWay {
    Seal,
    Gap,
    Overtopping,
    Rain,
    Seepage,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonInflowPart {
    way: JsonWay,
    flow_m3_per_s: f64,
    /// The formula.
    method: String,
    reference: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonNotCounted {
    way: JsonWay,
    reason: String,
}

impl JsonInflow {
    pub(in crate::report::json) fn of(inflow: &Inflow) -> Self {
        let not_stated = inflow.not_stated();
        Self {
            total_m3_per_s: finely(inflow.total().get::<cubic_meter_per_second>()),
            is_complete: inflow.is_complete(),
            parts: inflow.parts.iter().map(JsonInflowPart::of).collect(),
            not_counted: inflow.not_counted.iter().map(JsonNotCounted::of).collect(),
            not_stated: not_stated.iter().map(ToString::to_string).collect(),
        }
    }
}

impl JsonInflowPart {
    fn of(part: &InflowPart) -> Self {
        Self {
            way: JsonWay::from(part.way),
            flow_m3_per_s: finely(part.flow.get::<cubic_meter_per_second>()),
            method: part.method.to_owned(),
            reference: part.citation.to_string(),
        }
    }
}

impl JsonNotCounted {
    fn of(other: &NotCounted) -> Self {
        Self {
            way: JsonWay::from(other.way),
            reason: other.reason.to_string(),
        }
    }
}

impl From<Way> for JsonWay {
    fn from(way: Way) -> Self {
        match way {
            Way::Seal => Self::Seal,
            Way::Gap => Self::Gap,
            Way::Overtopping => Self::Overtopping,
            Way::Rain => Self::Rain,
            Way::Seepage => Self::Seepage,
        }
    }
}
