//! What is known of the water before one barrier.

use crate::load::{
    Behind, Debris, ImpactMethod, LEAST_HEAD_COEFFICIENT, LoadError, RiskCategory, Salinity,
    SoilGroup, WaterLoad,
};
use crate::quantity::{Length, Velocity};
use crate::statement::Choice;

/// The water before one barrier, as far as it is known: what is not stated is no part of
/// the load, and the load says so.
///
/// ```
/// use sillmark::load::{LoadPart, Salinity, WaterCase};
/// use sillmark::quantity::unit::{Length, Velocity, foot, foot_per_second, in_pounds_per_foot};
/// let feet = |number| Length::new::<foot>(number);
/// let still = WaterCase::still(feet(3.0), feet(0.5), Salinity::Fresh).load()?;
/// let barrier = still.total().clipped(feet(0.0), feet(3.0));
/// assert!((in_pounds_per_foot(barrier.resultant().force) - 280.8).abs() < 1e-9);
/// assert!(still.not_included.iter().any(|absent| absent.part == LoadPart::Flow));
///
/// let velocity = Some(Velocity::new::<foot_per_second>(5.0));
/// let flowing = WaterCase { velocity, ..WaterCase::still(feet(3.0), feet(0.5), Salinity::Fresh) };
/// assert!(flowing.load()?.total().resultant().force > still.total().resultant().force);
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaterCase {
    /// Height of the water surface over the sill; negative where it stays below.
    pub depth: Length,
    /// Height of the sill over the ground before the wall; negative where the sill lies
    /// below the ground.
    pub sill_above_ground: Length,
    /// Fresh or salt.
    pub salinity: Salinity,
    /// Speed of the water at the wall.
    pub velocity: Option<Velocity>,
    /// The coefficient a of the velocity head, at least 1.25.
    pub head_coefficient: f64,
    /// Width of the wall across the flow, on which the drag of fast water depends.
    pub wall_width: Option<Length>,
    /// Waves at the wall.
    pub waves: Option<WaveAction>,
    /// A depth that is added to the still water for its load only, such as the foot that
    /// ASCE 7 adds on surfaces exposed to free water. The barrier gets no higher by it.
    pub extra_load_depth: Option<Length>,
    /// What the water carries.
    pub debris: Option<Debris>,
    /// How the force of normal debris is found.
    pub impact: ImpactMethod,
    /// The soil against an opening below the ground.
    pub soil: Option<SoilGroup>,
}

/// Waves at the wall, as somebody states them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WaveAction {
    /// None worth a load.
    None,
    /// Waves that reach the wall without breaking: outside the methods here.
    NonBreaking,
    /// Waves that break on the wall.
    Breaking(BreakingWaves),
    /// Waves that break on the wall, but something that their load depends on is not known.
    BreakingWithout {
        /// What is missing, as a clause.
        missing: &'static str,
    },
}

/// Waves that break on the wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BreakingWaves {
    /// Risk category of the building.
    pub category: RiskCategory,
    /// What the water level of the case is the level of.
    pub level: WaveLevel,
    /// What stands behind the barrier.
    pub behind: Behind,
}

/// What a coastal water level is the level of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WaveLevel {
    /// The water without its waves.
    Stillwater,
    /// The crests of the waves, as on US flood maps of zone VE.
    Crest,
}

impl Choice for WaveLevel {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("stillwater", Self::Stillwater), ("crest", Self::Crest)];
}

impl WaterCase {
    /// Still water of a depth over the sill, and nothing else stated.
    #[must_use]
    pub fn still(depth: Length, sill_above_ground: Length, salinity: Salinity) -> Self {
        Self {
            depth,
            sill_above_ground,
            salinity,
            velocity: None,
            head_coefficient: LEAST_HEAD_COEFFICIENT,
            wall_width: None,
            waves: None,
            extra_load_depth: None,
            debris: None,
            impact: ImpactMethod::default(),
            soil: None,
        }
    }

    /// The load, part by part.
    ///
    /// # Errors
    /// [`LoadError`] for numbers that cannot be. What lies outside the methods is no error:
    /// it stands in [`WaterLoad::outside`].
    pub fn load(&self) -> Result<WaterLoad, LoadError> {
        super::assemble::load_of(self)
    }
}
