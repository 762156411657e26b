//! A sum of loads, each with its factor.

use std::ops::{Add, Mul};

use super::{FactorBasis, LoadZone};
use crate::statement::Citation;

/// A load combination: the factor on each load.
#[derive(Clone, Debug, PartialEq)]
pub struct Combination {
    /// Short name.
    pub id: String,
    /// The zones it holds for; `None` for all.
    pub zone: Option<LoadZone>,
    /// What its sum is compared with.
    pub basis: FactorBasis,
    /// Factor on dead load, D.
    pub dead: f64,
    /// Factor on live load, L.
    pub live: f64,
    /// Factor on snow, rain or live load on the roof, whichever governs, S.
    pub snow: f64,
    /// Factor on wind, W.
    pub wind: f64,
    /// Factor on flood load, Fa.
    pub flood: f64,
    /// Where it stands.
    pub citation: Citation,
}

/// The effect of each load, such as a force or a moment at one place, with its sign.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Actions<Effect> {
    /// Of dead load, D.
    pub dead: Effect,
    /// Of live load, L.
    pub live: Effect,
    /// Of snow, rain or live load on the roof, whichever governs, S.
    pub snow: Effect,
    /// Of wind, W.
    pub wind: Effect,
    /// Of flood load, Fa.
    pub flood: Effect,
}

impl Combination {
    /// The sum of the effects, each times its factor.
    ///
    /// ```
    /// use sillmark::load::{Actions, CombinationSet, FactorBasis, LoadZone};
    /// use sillmark::quantity::unit::{Force, pound_force};
    /// let sets = CombinationSet::shipped()?;
    /// let code = sets.iter().find(|set| set.id == "asce7-16-flood").unwrap();
    /// let flood = Force::new::<pound_force>(1000.0);
    /// let alone = Actions { flood, ..Actions::default() };
    /// for combination in code.combinations(LoadZone::Coastal, FactorBasis::Allowable) {
    ///     assert!((combination.sum(&alone).get::<pound_force>() - 1500.0).abs() < 1e-9);
    /// }
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn sum<Effect>(&self, actions: &Actions<Effect>) -> Effect
    where
        Effect: Copy + Add<Output = Effect> + Mul<f64, Output = Effect>,
    {
        actions.dead * self.dead
            + actions.live * self.live
            + actions.snow * self.snow
            + actions.wind * self.wind
            + actions.flood * self.flood
    }
}
