//! What a group of anchors has to carry.

use super::error::{AnchorError, Shown, not_negative};
use super::{AnchorGroup, Side};
use crate::quantity::Length;
use crate::quantity::unit::Force;

/// What a group has to carry: factored forces of one load combination.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Demand {
    /// Tension, where anchors are pulled.
    pub tension: Option<TensionDemand>,
    /// Shear, where there is any.
    pub shear: Option<ShearDemand>,
}

/// Which anchors are pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TensionAnchors {
    /// The whole group.
    All,
    /// The outermost row or column at a side.
    Outermost(Side),
}

/// Tension on a group.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TensionDemand {
    /// The anchors that are pulled.
    pub anchors: TensionAnchors,
    /// The sum `N_ua,g` over them.
    pub force: Force,
    /// Distance e'_N of the force from their centre, along x.
    pub eccentricity_x: Length,
    /// The same along y.
    pub eccentricity_y: Length,
    /// The greatest share `N_ua,i` of one anchor.
    pub greatest: Force,
}

impl TensionDemand {
    /// A force shared evenly by all `count` anchors of a group.
    #[must_use]
    pub fn even(force: Force, count: u32) -> Self {
        Self {
            anchors: TensionAnchors::All,
            force,
            eccentricity_x: Length::default(),
            eccentricity_y: Length::default(),
            greatest: force / f64::from(count),
        }
    }

    /// A force shared evenly by the `count` anchors of the outermost row at a side.
    #[must_use]
    pub fn on_row(side: Side, force: Force, count: u32) -> Self {
        Self {
            anchors: TensionAnchors::Outermost(side),
            ..Self::even(force, count)
        }
    }

    /// The part of a group that is pulled.
    pub(super) fn part_of(&self, group: &AnchorGroup) -> AnchorGroup {
        match self.anchors {
            TensionAnchors::All => group.clone(),
            TensionAnchors::Outermost(side) => group.outermost(side),
        }
    }
}

/// Shear on a group.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShearDemand {
    /// The side that the force acts toward.
    pub toward: Side,
    /// The sum `V_ua,g` over all anchors.
    pub force: Force,
    /// Distance e'_V of the force from the centre of the group, across the force.
    pub eccentricity: Length,
    /// The greatest share `V_ua,i` of one anchor.
    pub greatest: Force,
}

impl ShearDemand {
    /// A force shared evenly by all `count` anchors of a group.
    #[must_use]
    pub fn even(toward: Side, force: Force, count: u32) -> Self {
        Self {
            toward,
            force,
            eccentricity: Length::default(),
            greatest: force / f64::from(count),
        }
    }
}

impl Demand {
    pub(super) fn validate(&self, group: &AnchorGroup) -> Result<(), AnchorError> {
        if let Some(tension) = &self.tension {
            not_negative("tension", tension.force)?;
            not_negative("eccentricity", tension.eccentricity_x)?;
            not_negative("eccentricity", tension.eccentricity_y)?;
            let count = tension.part_of(group).count();
            at_least_even("tension", tension.greatest, tension.force, count)?;
        }
        if let Some(shear) = &self.shear {
            not_negative("shear", shear.force)?;
            not_negative("eccentricity", shear.eccentricity)?;
            at_least_even("shear", shear.greatest, shear.force, group.count())?;
        }
        Ok(())
    }
}

/// Refuses a greatest share below an even one, which no distribution can have.
fn at_least_even(
    what: &'static str,
    greatest: Force,
    force: Force,
    count: usize,
) -> Result<(), AnchorError> {
    let even = force / number(count);
    // A share typed in with five digits is meant as even.
    if greatest.value.is_finite() && greatest >= even * (1.0 - 1e-4) {
        return Ok(());
    }
    Err(AnchorError::ShareTooSmall {
        what,
        greatest: greatest.shown(),
        even: even.shown(),
    })
}

/// A count of anchors as a number to calculate with.
#[allow(clippy::cast_precision_loss)] // no group has 2^52 anchors
pub(super) fn number(count: usize) -> f64 {
    count as f64
}
