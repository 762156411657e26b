//! The posts at the wall.

use schemars::JsonSchema;
use serde::Serialize;

use super::anchors::JsonAnchorCheck;
use super::checks::JsonCase;
use crate::barrier::{BarrierDesign, EndAnchors, EndForces, EndPostDesign, Ends};
use crate::quantity::unit::pascal;
use crate::report::json::number::{metres, newtons, newtons_per_metre, rounded};
use crate::site::Mount;

/// How the ends of a barrier meet the wall.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub(super) enum JsonMount {
    /// Posts within the reveal.
    #[serde(rename = "inside")]
    Inside,
    /// Posts on the face of the wall beside the opening.
    #[serde(rename = "outside")]
    Outside,
    /// Posts with their backs to the wall, at the ends of a barrier that stands out from it.
    #[serde(rename = "against the wall")]
    AgainstWall,
}

/// One of the two end posts.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonEndPost {
    ends: Option<JsonMount>,
    /// Width of barrier whose water it carries.
    tributary_m: f64,
    /// What it hands over to the wall.
    forces: Vec<JsonEndForces>,
    /// Anchors up the post; null where the post bears on the face of the wall, and where the
    /// kit does not say where they are.
    anchors: Option<JsonEndAnchors>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonEndForces {
    case: JsonCase,
    force_n: f64,
    /// Height over the sill at which the force acts.
    height_m: f64,
    /// The greatest force on each metre of the jamb's height.
    greatest_n_per_m: f64,
    /// The greatest pressure of the post on the face of the wall; null in the reveal.
    bearing_pa: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonEndAnchors {
    /// Over the post's foot.
    heights_m: Vec<f64>,
    /// On the anchor that carries most.
    greatest_shear_n: f64,
    /// Load factor of the check.
    factor: f64,
    /// Null where nobody stated what they are set in or how they are fixed.
    check: Option<JsonAnchorCheck>,
}

impl JsonMount {
    /// How the ends of a barrier meet the wall, where that is known.
    pub(super) fn of(design: &BarrierDesign) -> Option<Self> {
        design.end_post.as_ref()?.ends.map(Self::from)
    }
}

impl From<Ends> for JsonMount {
    fn from(ends: Ends) -> Self {
        match ends {
            Ends::Mounted(Mount::Inside) => Self::Inside,
            Ends::Mounted(Mount::Outside) => Self::Outside,
            Ends::AgainstWall => Self::AgainstWall,
        }
    }
}

impl JsonEndPost {
    pub(super) fn of(end: &EndPostDesign) -> Self {
        Self {
            ends: end.ends.map(JsonMount::from),
            tributary_m: metres(end.tributary),
            forces: end.forces.iter().map(JsonEndForces::of).collect(),
            anchors: end.anchors.as_ref().map(JsonEndAnchors::of),
        }
    }
}

impl JsonEndForces {
    fn of(forces: &EndForces) -> Self {
        Self {
            case: JsonCase::of(forces.case),
            force_n: newtons(forces.force),
            height_m: metres(forces.height),
            greatest_n_per_m: newtons_per_metre(forces.greatest),
            bearing_pa: forces
                .bearing
                .map(|bearing| rounded(bearing.get::<pascal>())),
        }
    }
}

impl JsonEndAnchors {
    fn of(anchors: &EndAnchors) -> Self {
        Self {
            heights_m: anchors.heights.iter().copied().map(metres).collect(),
            greatest_shear_n: newtons(anchors.greatest_shear),
            factor: rounded(anchors.factor),
            check: anchors.check.as_ref().map(JsonAnchorCheck::of),
        }
    }
}
