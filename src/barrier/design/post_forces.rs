//! What a free-standing post hands over to its base plate and its brace.

use crate::barrier::{Brace, Check, LoadCase};
use crate::quantity::Length;
use crate::quantity::unit::{Force, Moment};
use crate::site::BraceSide;

/// Forces at the foot of a post, without load factors: the greatest of each, wherever debris
/// strikes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BaseForces {
    /// The case.
    pub case: LoadCase,
    /// Shear in the direction of the water.
    pub shear: Force,
    /// Moment about the base plate; above 0 it pulls on the anchors at the water side, below
    /// (under a brace that holds the post low) on those at the dry side.
    pub moment: Moment,
    /// Force along the post that lifts the plate; negative where it presses.
    pub uplift: Force,
}

/// What a brace carries, without load factors, in the case that asks most of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BraceForces {
    /// The case.
    pub case: LoadCase,
    /// On which side it stands.
    pub side: BraceSide,
    /// Height over the sill where it holds the post.
    pub at: Length,
    /// Horizontal force that it takes from the post.
    pub horizontal: Force,
    /// Force along it: thrust on the dry side, pull on the water side.
    pub along: Force,
    /// Vertical force at its foot: down on the dry side, up on the water side.
    pub vertical: Force,
    /// Load factor with which it is held against what its maker allows: that of the checks of
    /// the post it holds.
    pub factor: f64,
    /// What its maker allows along it, where it is stated.
    pub capacity: Option<Force>,
}

impl BraceForces {
    /// The forces in a brace that takes a horizontal force from a post.
    pub(super) fn of(
        case: LoadCase,
        brace: &Brace,
        side: BraceSide,
        height: Length,
        horizontal: Force,
        factor: f64,
    ) -> Self {
        let at = height * brace.attachment.value;
        let slope = (at / brace.foot).value;
        Self {
            case,
            side,
            at,
            horizontal,
            along: horizontal * slope.hypot(1.0),
            vertical: horizontal * slope,
            factor,
            capacity: brace.capacity,
        }
    }

    /// The force along it with the load factor.
    #[must_use]
    pub fn demand(&self) -> Force {
        self.along * self.factor
    }

    /// How far what its maker allows is used, 1 at the limit; `None` where he does not say.
    #[must_use]
    pub fn used(&self) -> Option<f64> {
        Some((self.demand() / self.capacity?).value)
    }

    /// Whether it carries what its maker allows, where he says.
    pub(super) fn holds(&self) -> bool {
        self.capacity
            .is_none_or(|capacity| Check::within(self.demand().value, capacity.value))
    }

    /// The force that lifts the foot of the post: a strut on the dry side pushes the post up,
    /// a tie before it pulls it down.
    pub(super) fn uplift_of_post(self) -> Force {
        match self.side {
            BraceSide::Dry => self.vertical,
            BraceSide::Water => -self.vertical,
        }
    }

    /// The force that lifts the brace's own foot; negative where it presses.
    pub(super) fn uplift_of_foot(self) -> Force {
        -self.uplift_of_post()
    }
}
