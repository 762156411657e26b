//! Impact by the commentary of ASCE 7.

use std::f64::consts::PI;

use super::stopped_object::{object_weight, weight};
use crate::load::error::{coefficient, speed, time};
use crate::load::{LoadError, RiskCategory, standard_gravity};
use crate::quantity::Velocity;
use crate::quantity::unit::{Force, Time, second};

/// Impact of a single object, F = π·W·V·CI·CO·CD·CB·Rmax/(2·g·Δt).
///
/// Reference: ASCE 7-16 commentary C5.4.5 with its tables. All of it is from memory, so it
/// is never used unless the user asks for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CommentaryImpact {
    /// W, weight of the object.
    pub weight: Force,
    /// Gives the importance coefficient CI.
    pub category: RiskCategory,
    /// CO, how squarely the object meets the building: 0.8.
    pub orientation: f64,
    /// CD, see [`debris_depth_coefficient`](super::debris_depth_coefficient).
    pub depth_coefficient: f64,
    /// CB, see [`blockage_coefficient`](super::blockage_coefficient).
    pub blockage: f64,
    /// Rmax, see [`response_ratio`].
    pub response_ratio: f64,
    /// Δt, duration of the impact: 0.03 s.
    pub duration: Time,
}

/// Importance coefficient CI: 0.6, 1.0, 1.2, 1.3 for risk category I to IV (ASCE 7-16
/// commentary, table C5.4-1, from memory).
#[must_use]
pub const fn importance_coefficient(category: RiskCategory) -> f64 {
    match category {
        RiskCategory::I => 0.6,
        RiskCategory::II => 1.0,
        RiskCategory::III => 1.2,
        RiskCategory::IV => 1.3,
    }
}

/// Greatest response ratio by duration of the impact over natural period of the structure.
const RESPONSES: [(f64, f64); 14] = [
    (0.0, 0.0),
    (0.1, 0.4),
    (0.2, 0.8),
    (0.3, 1.1),
    (0.4, 1.4),
    (0.5, 1.5),
    (0.6, 1.7),
    (0.7, 1.8),
    (0.9, 1.8),
    (1.0, 1.7),
    (1.1, 1.7),
    (1.2, 1.6),
    (1.3, 1.6),
    (1.4, 1.5),
];

/// Greatest response ratio Rmax for an impact of `duration` on a structure of a natural
/// period, straight between the rows of the table (0.1: 0.4, 0.2: 0.8, … 0.7–0.9: 1.8, …
/// from 1.4 on: 1.5).
///
/// Reference: ASCE 7-16 commentary, table C5.4-3 (from memory, less sure than the formula).
///
/// # Errors
/// [`LoadError`] for a time that is not above zero.
///
/// ```
/// use sillmark::load::response_ratio;
/// use sillmark::quantity::unit::{Time, second};
/// let seconds = |number| Time::new::<second>(number);
/// assert!((response_ratio(seconds(0.03), seconds(0.2))? - 0.6).abs() < 1e-9); // 0.15
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
pub fn response_ratio(duration: Time, natural_period: Time) -> Result<f64, LoadError> {
    let ratio =
        (time("duration of the impact", duration)? / time("natural period", natural_period)?).value;
    let above = RESPONSES.iter().position(|(row, _)| *row >= ratio);
    Ok(match above {
        None => 1.5,
        Some(0) => 0.0,
        Some(above) => {
            let ((low, from), (high, to)) = (RESPONSES[above - 1], RESPONSES[above]);
            from + (to - from) * (ratio - low) / (high - low)
        }
    })
}

impl CommentaryImpact {
    /// An object of 1,000 lb, CO 0.8 and Δt 0.03 s, with the coefficients that depend on
    /// building and place.
    #[must_use]
    pub fn usual(
        category: RiskCategory,
        depth_coefficient: f64,
        blockage: f64,
        response_ratio: f64,
    ) -> Self {
        Self {
            weight: object_weight(),
            category,
            orientation: 0.8,
            depth_coefficient,
            blockage,
            response_ratio,
            duration: Time::new::<second>(0.03),
        }
    }

    /// The force at a velocity.
    ///
    /// # Errors
    /// [`LoadError`] for a coefficient outside its table, or a velocity, weight or time that
    /// cannot be.
    ///
    /// ```
    /// use sillmark::load::{CommentaryImpact, RiskCategory};
    /// use sillmark::quantity::unit::{Velocity, foot_per_second, pound_force};
    /// let impact = CommentaryImpact::usual(RiskCategory::II, 1.0, 1.0, 0.8);
    /// let force = impact.force(Velocity::new::<foot_per_second>(5.0))?;
    /// assert!((force.get::<pound_force>() - 5203.5).abs() < 0.05);
    /// # Ok::<(), sillmark::load::LoadError>(())
    /// ```
    pub fn force(&self, velocity: Velocity) -> Result<Force, LoadError> {
        let coefficients = importance_coefficient(self.category)
            * part("orientation coefficient CO", self.orientation)?
            * part("depth coefficient CD", self.depth_coefficient)?
            * part("blockage coefficient CB", self.blockage)?
            * coefficient(
                "response ratio Rmax",
                self.response_ratio,
                0.0..=1.8,
                "a number from 0 to 1.8",
            )?;
        let stop = standard_gravity() * time("duration of the impact", self.duration)?;
        let ratio = speed(velocity)? / stop;
        Ok(weight(self.weight)? * ratio * (PI / 2.0 * coefficients))
    }
}

pub(super) fn part(name: &'static str, value: f64) -> Result<f64, LoadError> {
    coefficient(name, value, 0.0..=1.0, "a number from 0 to 1")
}
