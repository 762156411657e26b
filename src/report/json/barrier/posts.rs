//! The free-standing posts.

use schemars::JsonSchema;
use serde::Serialize;

use super::checks::JsonCase;
use crate::barrier::{BaseForces, BraceForces, Upright, UprightDesign};
use crate::quantity::unit::in_newton_metres;
use crate::report::json::number::{metres, newtons, rounded};
use crate::site::BraceSide;

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonRole {
    /// Between two planks of one leg.
    Intermediate,
    /// Where two legs meet.
    Corner,
}

/// Posts of one kind.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonPost {
    role: JsonRole,
    count: u32,
    /// Width of barrier whose water one of them carries; at a corner the vector sum of both
    /// legs'.
    tributary_m: f64,
    /// Null where it stands without one.
    brace: Option<JsonBrace>,
    /// Forces at the foot of one.
    base: Vec<JsonBase>,
}

/// A brace, in the case that asks most of it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonBrace {
    case: JsonCase,
    side: JsonSide,
    /// Height over the sill where it holds the post.
    at_m: f64,
    /// Taken from the post.
    horizontal_n: f64,
    /// Thrust on the dry side, pull on the water side.
    along_n: f64,
    /// At its foot: down on the dry side, up on the water side.
    vertical_n: f64,
    /// Load factor with which the force along it is held against what its maker allows.
    factor: f64,
    /// Along it, by its maker; null where it is not stated.
    capacity_n: Option<f64>,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonSide {
    DrySide,
    WaterSide,
}

/// At the base plate.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonBase {
    case: JsonCase,
    /// In the direction of the water.
    shear_n: f64,
    /// Below zero it pulls on the anchors at the dry side.
    moment_nm: f64,
    /// Lifts the plate; below zero it presses.
    uplift_n: f64,
}

impl JsonPost {
    pub(super) fn of(post: &UprightDesign) -> Self {
        Self {
            role: match post.role {
                Upright::Intermediate => JsonRole::Intermediate,
                Upright::Corner => JsonRole::Corner,
            },
            count: post.count,
            tributary_m: metres(post.tributary),
            brace: post.brace.as_ref().map(JsonBrace::of),
            base: post.base.iter().map(JsonBase::of).collect(),
        }
    }
}

impl JsonBrace {
    fn of(brace: &BraceForces) -> Self {
        Self {
            case: JsonCase::of(brace.case),
            side: match brace.side {
                BraceSide::Dry => JsonSide::DrySide,
                BraceSide::Water => JsonSide::WaterSide,
            },
            at_m: metres(brace.at),
            horizontal_n: newtons(brace.horizontal),
            along_n: newtons(brace.along),
            vertical_n: newtons(brace.vertical),
            factor: brace.factor,
            capacity_n: brace.capacity.map(newtons),
        }
    }
}

impl JsonBase {
    pub(super) fn of(base: &BaseForces) -> Self {
        Self {
            case: JsonCase::of(base.case),
            shear_n: newtons(base.shear),
            moment_nm: rounded(in_newton_metres(base.moment)),
            uplift_n: newtons(base.uplift),
        }
    }
}
