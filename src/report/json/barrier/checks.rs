//! Demand beside capacity.

use schemars::JsonSchema;
use serde::Serialize;

use crate::barrier::{Amount, Check, LoadCase};
use crate::report::json::number::{part, rounded};
use crate::report::nearest::{How, Nearest};

/// The water that a figure is for.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(super) enum JsonCase {
    /// At the design level.
    DesignLevel,
    /// At the top of the barrier.
    TopOfBarrier,
}

/// One check of a part.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonCheck {
    /// Such as `plank 1`, counted from the sill, or `intermediate post`.
    part: String,
    /// Number of the leg, from 1, for planks; null for posts.
    leg: Option<usize>,
    /// `bending`, `shear` or `deflection`.
    what: String,
    case: JsonCase,
    /// With load factors for strength, without for deflection.
    demand: f64,
    capacity: f64,
    /// Of demand and capacity: N·m, N or m.
    unit: String,
    /// Demand over capacity; null where there is no capacity.
    ratio: Option<f64>,
    holds: bool,
    /// How both come about, with their clauses.
    reference: String,
}

/// What is nearest to its limit.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonGoverning {
    /// The part.
    part: String,
    /// Number of the leg, from 1, for planks.
    leg: Option<usize>,
    /// Bending, shear, deflection, or the way in which anchors fail.
    what: String,
    case: JsonCase,
    /// Demand over capacity; null where there is no capacity.
    ratio: Option<f64>,
}

impl JsonCase {
    pub(super) const fn of(case: LoadCase) -> Self {
        match case {
            LoadCase::DesignLevel => Self::DesignLevel,
            LoadCase::Top => Self::TopOfBarrier,
        }
    }
}

impl JsonCheck {
    pub(super) fn of((leg, check): (Option<usize>, &Check)) -> Self {
        let unit = match check.demand {
            Amount::Moment(_) => "N·m",
            Amount::Force(_) => "N",
            Amount::Deflection(_) => "m",
        };
        Self {
            part: check.part.clone(),
            leg,
            what: check.what.to_owned(),
            case: JsonCase::of(check.case),
            demand: rounded(check.demand.in_si()),
            capacity: rounded(check.capacity.in_si()),
            unit: unit.to_owned(),
            ratio: part(check.ratio()),
            holds: check.holds(),
            reference: check.reference.clone(),
        }
    }
}

impl JsonGoverning {
    pub(super) fn of(nearest: Nearest) -> Self {
        Self {
            case: JsonCase::of(nearest.case),
            ratio: part(nearest.used),
            part: nearest.part,
            leg: nearest.leg,
            what: match nearest.how {
                How::Member(what) => what.to_owned(),
                How::Along => "force along it".to_owned(),
                How::Anchors(mode) => mode.to_string(),
                How::AnchorsTogether => "tension and shear together".to_owned(),
            },
        }
    }
}
