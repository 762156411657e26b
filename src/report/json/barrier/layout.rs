//! Planks and the spans that they are cut for.

use schemars::JsonSchema;
use serde::Serialize;

use crate::barrier::{BarrierDesign, PlannedLeg, Span};
use crate::report::json::number::metres;

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonPlanks {
    /// Planks one on the other.
    count: u32,
    /// Planks of all spans.
    in_all: u32,
    /// Height that one plank adds.
    cover_m: f64,
    /// The lengths that they are cut to, the longest first.
    cut_m: Vec<f64>,
}

/// A straight part of the barrier.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonLeg {
    length_m: f64,
    /// In their order along the leg.
    spans: Vec<JsonSpan>,
    /// Why it has more than one span; empty where it has one, or where the posts alone ask for
    /// it.
    divided_because: Vec<String>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
#[allow(clippy::struct_field_names)] // a key ends in its unit
struct JsonSpan {
    /// Between the posts.
    clear_m: f64,
    /// That a plank bends over.
    bearing_m: f64,
    /// That a plank is cut to.
    cut_m: f64,
}

impl JsonPlanks {
    pub(super) fn of(design: &BarrierDesign) -> Self {
        let stack = design.stack;
        let planks = design.pieces.iter().filter(|piece| piece.name == "plank");
        Self {
            count: stack.count,
            in_all: planks.clone().map(|piece| piece.count).sum(),
            cover_m: metres(stack.height / f64::from(stack.count)),
            cut_m: planks.map(|piece| metres(piece.length)).collect(),
        }
    }
}

impl JsonLeg {
    pub(super) fn of(planned: &PlannedLeg) -> Self {
        let because = planned.divided_because.iter();
        Self {
            length_m: metres(planned.leg.length),
            spans: planned.leg.spans.iter().map(JsonSpan::of).collect(),
            divided_because: because.map(|reason| (*reason).to_owned()).collect(),
        }
    }
}

impl JsonSpan {
    fn of(span: &Span) -> Self {
        Self {
            clear_m: metres(span.clear),
            bearing_m: metres(span.bearing),
            cut_m: metres(span.cut),
        }
    }
}
