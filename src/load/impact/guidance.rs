//! Impact by FEMA P-55.

use super::commentary::part;
use super::stopped_object::weight;
use crate::load::LoadError;
use crate::load::error::speed;
use crate::quantity::Velocity;
use crate::quantity::unit::{Force, foot_per_second};
use crate::statement::Choice;

/// Impact of a single object, F = W·V·CD·CB·C with V in feet per second; C holds the
/// rest of the formula of the commentary of ASCE 7, in seconds per foot.
///
/// The table of `CStr` has no removable barrier: the structure that stands behind has to be
/// named. Reference: FEMA P-55 (2011) vol. II Eq. 8.9 (all from memory, so it is never used
/// unless the user asks for it).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GuidanceImpact {
    /// W, weight of the object.
    pub weight: Force,
    /// CD, see [`debris_depth_coefficient`](super::debris_depth_coefficient).
    pub depth_coefficient: f64,
    /// CB, see [`blockage_coefficient`](super::blockage_coefficient).
    pub blockage: f64,
    /// Gives `CStr`.
    pub structure: StruckStructure,
}

/// The structures of the table of `CStr`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StruckStructure {
    /// Timber piles and masonry columns of buildings up to three storeys: 0.2.
    TimberPileOrMasonryColumn,
    /// Concrete piles, and concrete or steel moment frames: 0.4.
    ConcretePileOrMomentFrame,
    /// Walls of reinforced concrete in the foundation: 0.8.
    ConcreteFoundationWall,
}

impl Choice for StruckStructure {
    const CHOICES: &'static [(&'static str, Self)] = &[
        (
            "timber pile or masonry column",
            Self::TimberPileOrMasonryColumn,
        ),
        (
            "concrete pile or moment frame",
            Self::ConcretePileOrMomentFrame,
        ),
        ("concrete foundation wall", Self::ConcreteFoundationWall),
    ];
}

impl StruckStructure {
    /// The coefficient `CStr`, in seconds per foot.
    #[must_use]
    pub const fn coefficient(self) -> f64 {
        match self {
            Self::TimberPileOrMasonryColumn => 0.2,
            Self::ConcretePileOrMomentFrame => 0.4,
            Self::ConcreteFoundationWall => 0.8,
        }
    }
}

impl GuidanceImpact {
    /// The force at a velocity.
    ///
    /// # Errors
    /// [`LoadError`] for a coefficient outside 0 to 1, or a velocity or weight that cannot be.
    ///
    /// ```
    /// use sillmark::load::{GuidanceImpact, StruckStructure, object_weight};
    /// use sillmark::quantity::unit::{Velocity, foot_per_second, pound_force};
    /// let impact = GuidanceImpact {
    ///     weight: object_weight(),
    ///     depth_coefficient: 0.5,
    ///     blockage: 1.0,
    ///     structure: StruckStructure::ConcreteFoundationWall,
    /// };
    /// let force = impact.force(Velocity::new::<foot_per_second>(5.0))?;
    /// assert!((force.get::<pound_force>() - 2000.0).abs() < 1e-6);
    /// # Ok::<(), sillmark::load::LoadError>(())
    /// ```
    pub fn force(&self, velocity: Velocity) -> Result<Force, LoadError> {
        let coefficients = part("depth coefficient CD", self.depth_coefficient)?
            * part("blockage coefficient CB", self.blockage)?
            * self.structure.coefficient();
        Ok(weight(self.weight)? * speed(velocity)?.get::<foot_per_second>() * coefficients)
    }
}
