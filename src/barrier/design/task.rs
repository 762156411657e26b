//! What a barrier is asked to do, and by which rules it is designed.

use crate::barrier::{DeflectionLimit, MountPlace, Practice, Run};
use crate::load::{CombinationSet, LoadZone, ResistanceBasis, WaterCase};
use crate::quantity::Length;
use crate::site::BraceSide;

/// One barrier to design.
#[derive(Clone, Debug, PartialEq)]
pub struct BarrierTask {
    /// The line that it follows.
    pub run: Run,
    /// Height over the sill that it has to reach.
    pub height: Length,
    /// Clear height of the opening, where it is known.
    pub opening_height: Option<Length>,
    /// What the opening offers to end posts.
    pub place: MountPlace,
    /// The side on which a brace may stand.
    pub brace: Option<BraceSide>,
    /// The water at the design level; its depth is the height of that level over the sill.
    pub water: WaterCase,
}

/// The rules that a barrier is designed by.
#[derive(Clone, Debug, PartialEq)]
pub struct DesignRules {
    /// Load factors.
    pub combination: CombinationSet,
    /// The zone that they are taken for.
    pub zone: LoadZone,
    /// The greatest deflection.
    pub deflection: DeflectionLimit,
    /// When common practice asks for an intermediate post.
    pub practice: Practice,
}

impl DesignRules {
    /// Whether the strengths of anchors that are worked out here, those of ACI 318, go with
    /// the load factors: with partial factors it is those of EN 1992-4 that do.
    pub(super) fn has_anchor_strengths(&self) -> bool {
        self.combination.resistance != Some(ResistanceBasis::PartialFactors)
    }
}
