//! A designed barrier.

mod anchors;
mod checks;
mod end_post;
mod inflow;
mod layout;
mod loads;
mod pieces;
mod posts;

pub(super) use inflow::JsonInflow;

use schemars::JsonSchema;
use serde::Serialize;

use self::anchors::JsonPlateAnchors;
use self::checks::{JsonCheck, JsonGoverning};
use self::end_post::{JsonEndPost, JsonMount};
use self::layout::{JsonLeg, JsonPlanks};
use self::loads::JsonCaseLoad;
use self::pieces::{JsonHandling, JsonPiece};
use self::posts::JsonPost;
use super::number::metres;
use crate::barrier::{BarrierAnswer, Upright};
use crate::quantity::UnitSystem;
use crate::report::nearest::{Nearest, checks};

/// A barrier of a kit: planks, posts, loads, checks, anchors, pieces, leakage. Forces are
/// without load factors unless a field says otherwise.
///
/// ```
/// use sillmark::report::JsonBarrier;
/// let schema = schemars::schema_for!(JsonBarrier);
/// assert!(schema.get("required").unwrap().to_string().contains("barrier_height_m"));
/// ```
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(title = "sillmark barrier", deny_unknown_fields)]
pub struct JsonBarrier {
    /// How the ends meet the wall; null where that has to be measured first, or no post of the
    /// kit fits.
    mount: Option<JsonMount>,
    planks: JsonPlanks,
    /// Height of all planks together.
    barrier_height_m: f64,
    /// The straight parts, in their order along the barrier.
    legs: Vec<JsonLeg>,
    /// Spans of all legs.
    spans: u32,
    /// Posts between the ends of a leg.
    intermediate_posts: u32,
    /// Posts where two legs meet.
    corner_posts: u32,
    /// The water at the design level, and at the top of the barrier.
    loads: Vec<JsonCaseLoad>,
    /// Planks and free-standing posts. Of the planks those with the greatest load.
    checks: Vec<JsonCheck>,
    /// What is nearest to its limit, or furthest beyond: planks, posts, braces and anchors.
    governing: Option<JsonGoverning>,
    /// The longest that planks may span under these loads; null where no span holds.
    longest_span_m: Option<f64>,
    /// The deepest water over the sill before planks of this span, up to the height that the
    /// kit's maker allows; null where no depth holds.
    greatest_depth_m: Option<f64>,
    /// The posts at the wall; null where the kit has none that could stand there.
    end_post: Option<JsonEndPost>,
    /// The free-standing posts.
    posts: Vec<JsonPost>,
    /// The anchors under base plates.
    anchors: Vec<JsonPlateAnchors>,
    /// What has to be cut.
    pieces: Vec<JsonPiece>,
    handling: JsonHandling,
    /// Water that gets past the barrier, with water at the design level.
    inflow: JsonInflow,
    /// Why the barrier is no answer without a licensed engineer; empty where it is one.
    shortfalls: Vec<String>,
    /// What is still to be measured, stated or chosen.
    open: Vec<String>,
}

impl JsonBarrier {
    /// A barrier, with its sentences in units.
    #[must_use]
    pub fn of(answer: &BarrierAnswer, units: UnitSystem) -> Self {
        let design = &answer.design;
        Self {
            mount: JsonMount::of(design),
            planks: JsonPlanks::of(design),
            barrier_height_m: metres(design.stack.height),
            legs: design.legs.iter().map(JsonLeg::of).collect(),
            spans: design.spans(),
            intermediate_posts: design.count(Upright::Intermediate),
            corner_posts: design.count(Upright::Corner),
            loads: design
                .loads
                .iter()
                .map(|load| JsonCaseLoad::of(load, design))
                .collect(),
            checks: checks(design).map(JsonCheck::of).collect(),
            governing: Nearest::of(design).map(JsonGoverning::of),
            longest_span_m: design.longest_span.map(metres),
            greatest_depth_m: design.greatest_depth.map(metres),
            end_post: design.end_post.as_ref().map(JsonEndPost::of),
            posts: design.uprights.iter().map(JsonPost::of).collect(),
            anchors: design.anchors.iter().map(JsonPlateAnchors::of).collect(),
            pieces: design.pieces.iter().map(JsonPiece::of).collect(),
            handling: JsonHandling::of(&answer.handling),
            inflow: JsonInflow::of(&answer.inflow),
            shortfalls: design
                .shortfalls
                .iter()
                .map(|shortfall| shortfall.text(units))
                .collect(),
            open: design.open.iter().map(|open| open.text(units)).collect(),
        }
    }
}
