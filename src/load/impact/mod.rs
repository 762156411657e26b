//! Debris that the water carries against a barrier.

mod coefficients;
mod commentary;
mod guidance;
mod stopped_object;

pub use coefficients::{DebrisZone, blockage_coefficient, debris_depth_coefficient};
pub use commentary::{CommentaryImpact, importance_coefficient, response_ratio};
pub use guidance::{GuidanceImpact, StruckStructure};
pub use stopped_object::{StoppedObject, object_weight};

use super::reference::{derived, from_memory, seen};
use super::{LoadError, PressureBand};
use crate::quantity::unit::{Force, foot, pounds_per_foot};
use crate::quantity::{Length, LineLoad, Velocity};
use crate::statement::{Choice, Citation};

/// What the water carries.
///
/// Reference: US government flood-proofing manual (1986) section 6.4.2, p. 49.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Debris {
    /// Nothing worth a load.
    None,
    /// Single objects, at the speed of the water.
    Normal,
    /// A mat of debris: 100 lb/ft on a strip 1 ft high.
    Special,
    /// Boats, buildings, trees: no barrier is designed for them.
    Extreme,
}

impl Choice for Debris {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("none", Self::None),
        ("normal", Self::Normal),
        ("special", Self::Special),
        ("extreme", Self::Extreme),
    ];
}

/// How the force of a single object is found. The methods differ by a factor of 17 before
/// their coefficients, since the older guidance stops the object in 0.5 s and the commentary
/// of ASCE 7 in 0.03 s: who uses another than the default has to name it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ImpactMethod {
    /// Stopped evenly in a time.
    Stopped(StoppedObject),
    /// By the commentary of ASCE 7.
    Commentary(CommentaryImpact),
    /// By FEMA P-55.
    Guidance(GuidanceImpact),
}

impl Default for ImpactMethod {
    /// 1,000 lb stopped in 0.5 s, the method whose text was seen.
    fn default() -> Self {
        Self::Stopped(StoppedObject::default())
    }
}

impl ImpactMethod {
    /// The force of the object on 1 ft².
    ///
    /// # Errors
    /// [`LoadError`] for a velocity or coefficient out of its range.
    pub fn force(&self, velocity: Velocity) -> Result<Force, LoadError> {
        match self {
            Self::Stopped(object) => object.force(velocity),
            Self::Commentary(impact) => impact.force(velocity),
            Self::Guidance(impact) => impact.force(velocity),
        }
    }

    /// Where the method stands.
    #[must_use]
    pub fn reference(&self) -> Citation {
        match self {
            Self::Stopped(object) if *object == StoppedObject::default() => seen(
                "Simi Valley Municipal Code 7-5.704: normal impact, 1,000 lb stopped in 0.5 s on \
                 1 ft²",
            ),
            Self::Stopped(_) => derived(
                "Simi Valley Municipal Code 7-5.704, normal impact W·V/(g·t), with a weight or \
                 time as stated",
            ),
            Self::Commentary(_) => {
                from_memory("ASCE 7-16 commentary C5.4.5: π·W·V·CI·CO·CD·CB·Rmax/(2·g·Δt)")
            }
            Self::Guidance(_) => from_memory("FEMA P-55 (2011) vol. II Eq. 8.9: W·V·CD·CB·CStr"),
        }
    }
}

/// The force of debris, and the area that takes it. It acts at the most critical place at or
/// below the water surface, on top of the load of the water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Impact {
    /// A force on a patch.
    Patch {
        /// The force.
        force: Force,
        /// Width of the patch along the barrier.
        width: Length,
        /// Height of the patch.
        height: Length,
    },
    /// A force along the whole barrier.
    Strip {
        /// Force on each unit of width.
        force: LineLoad,
        /// Height of the strip.
        height: Length,
    },
}

impl Impact {
    /// Where special impact stands.
    pub const SPECIAL_SOURCE: &'static str = "US government flood-proofing manual (1986) 6.4.2 \
         p. 49 and Simi Valley Municipal Code 7-5.704: special impact, 100 lb/ft on a strip 1 ft \
         high";

    /// A force on 1 ft × 1 ft.
    #[must_use]
    pub fn on_a_square_foot(force: Force) -> Self {
        let side = Length::new::<foot>(1.0);
        Self::Patch {
            force,
            width: side,
            height: side,
        }
    }

    /// Special impact: 100 lb/ft on a strip 1 ft high.
    ///
    /// Reference: US government flood-proofing manual (1986) section 6.4.2, p. 49; Simi Valley
    /// Municipal Code 7-5.704.
    #[must_use]
    pub fn special() -> Self {
        Self::Strip {
            force: pounds_per_foot(100.0),
            height: Length::new::<foot>(1.0),
        }
    }

    /// The pressure of the impact where its area begins at the height `lowest` over the sill.
    /// It presses on [`width`](Self::width) of the barrier.
    ///
    /// ```
    /// use sillmark::load::Impact;
    /// use sillmark::quantity::unit::{Force, Length, foot, pound_force, pound_per_square_foot};
    /// let impact = Impact::on_a_square_foot(Force::new::<pound_force>(310.6));
    /// let band = impact.band(Length::new::<foot>(1.5));
    /// assert!((band.to.get::<foot>() - 2.5).abs() < 1e-9);
    /// assert!((band.at_from.get::<pound_per_square_foot>() - 310.6).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn band(&self, lowest: Length) -> PressureBand {
        let (pressure, height) = match *self {
            Self::Patch {
                force,
                width,
                height,
            } => (force / width / height, height),
            Self::Strip { force, height } => (force / height, height),
        };
        PressureBand {
            from: lowest,
            to: lowest + height,
            at_from: pressure,
            at_to: pressure,
        }
    }

    /// Width along the barrier that the impact presses on; `None` for all of it.
    #[must_use]
    pub fn width(&self) -> Option<Length> {
        match self {
            Self::Patch { width, .. } => Some(*width),
            Self::Strip { .. } => None,
        }
    }
}
