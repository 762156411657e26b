//! Waves that break on an upright wall.

use super::error::{height, positive};
use super::{LoadError, PressureBand, PressureProfile, Resultant, RiskCategory};
use crate::quantity::{Length, LineLoad, Pressure, SpecificWeight};
use crate::statement::Choice;

/// What stands behind the wall.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Behind {
    /// Nothing: the wall keeps the water out.
    #[default]
    Dry,
    /// Still water as high as the stillwater before the wall.
    EqualWater,
}

impl Choice for Behind {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("dry", Self::Dry), ("equal water", Self::EqualWater)];
}

/// A wave that breaks on an upright wall, the water under it included: still water is not
/// added again.
///
/// With the stillwater depth d before the wall, the weight of water γ and the coefficient
/// Cp of the building's risk category:
///
/// | quantity | dry behind | equal water behind |
/// | --- | --- | --- |
/// | greatest pressure, at the stillwater surface | Cp·γ·d + 1.2·γ·d | the same |
/// | force on each unit of width | 1.1·Cp·γ·d² + 2.4·γ·d² | 1.1·Cp·γ·d² + 1.9·γ·d² |
///
/// The pressures behind the formula are two triangles from the crest, 1.2·d above the
/// stillwater, to the ground: water standing up to the crest (2.2·γ·d at the ground), and
/// the blow of the wave with its peak Cp·γ·d at the stillwater. These give 2.42 where the
/// code rounds to 2.4, and 1.92 for 1.9: [`profile`](Self::profile) has the triangles,
/// [`code_force`](Self::code_force) the code's numbers.
///
/// The code also lets the whole force act at the stillwater surface, while the triangles
/// have their resultant lower (0.87·d over the ground for category I, 0.94·d for IV): for
/// a wall that is fixed at the ground [`code_resultant`](Self::code_resultant) is the
/// safe side.
///
/// References: ASCE 7 section 5.4.4.2 as in FEMA P-55 (2011) vol. II Eq. 8.6, whose note
/// says that still water is included; Cp 3.2 seen, 1.6, 2.8 and 3.5 from memory; the
/// triangles from the figure in ASCE 7 (from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BreakingWave {
    /// Depth of the still water over the ground before the wall.
    pub stillwater_depth: Length,
    /// Height of the sill over that ground; negative where the sill lies lower.
    pub sill_above_ground: Length,
    /// Risk category of the building.
    pub category: RiskCategory,
    /// Weight of the water.
    pub weight: SpecificWeight,
    /// What stands behind the wall.
    pub behind: Behind,
}

/// Part of the stillwater depth that the crest of the reflected wave rises above it.
const CREST: f64 = 1.2;

/// Breaking height of a wave over its stillwater depth.
const BREAKING: f64 = 0.78;

/// Stillwater depth over the depth that includes the wave's crest.
const STILLWATER_OF_CREST: f64 = 0.65;

/// Where the numbers of this file stand, with how sure that is.
pub(super) mod source {
    pub(in super::super) const FORCE: &str = "FEMA P-55 (2011) vol. II Eq. 8.6a and 8.6b, ASCE 7 5.4.4.2: 1.1·Cp·γ·d² + 2.4·γ·d² \
         dry behind, 1.9 with equal water behind; still water is included";
    pub(in super::super) const SHAPE: &str =
        "ASCE 7 5.4.4.2, figure: triangles from the crest 1.2·d above stillwater to the ground";
    pub(in super::super) const COEFFICIENT: &str = "ASCE 7 5.4.4.2, table of Cp by risk category";
    pub(in super::super) const STILLWATER: &str =
        "ASCE 7 5.4.4: d = 0.65·(BFE − G) where the level includes the wave crest";
}

impl RiskCategory {
    /// The wave pressure coefficient Cp: 1.6, 2.8, 3.2, 3.5 for I to IV (ASCE 7 table
    /// 5.4-1; 3.2 seen in a public calculation, the others and the table's number from
    /// memory).
    #[must_use]
    pub const fn wave_pressure_coefficient(self) -> f64 {
        match self {
            Self::I => 1.6,
            Self::II => 2.8,
            Self::III => 3.2,
            Self::IV => 3.5,
        }
    }
}

/// Height of the wave that breaks in a stillwater depth, H = 0.78·d (ASCE 7 Eq. 5.4-2,
/// equation number from memory).
#[must_use]
pub fn breaking_wave_height(stillwater_depth: Length) -> Length {
    stillwater_depth * BREAKING
}

/// Stillwater depth under a coastal flood level that includes the wave's crest,
/// d = 0.65·(BFE − G), from the depth of that level over the ground.
///
/// Reference: ASCE 7 Eq. 5.4-3, as a public coastal calculation cites it.
///
/// ```
/// use sillmark::load::{breaking_wave_height, stillwater_depth_under_crest};
/// use sillmark::quantity::unit::{Length, foot};
/// let depth = stillwater_depth_under_crest(Length::new::<foot>(10.0));
/// assert!((depth.get::<foot>() - 6.5).abs() < 1e-12);
/// assert!((breaking_wave_height(depth).get::<foot>() - 5.07).abs() < 1e-12);
/// ```
#[must_use]
pub fn stillwater_depth_under_crest(level_over_ground: Length) -> Length {
    level_over_ground * STILLWATER_OF_CREST
}

impl BreakingWave {
    /// The same wave, if its depth is above zero and its numbers are some.
    ///
    /// # Errors
    /// [`LoadError`] naming what is not.
    pub fn checked(self) -> Result<Self, LoadError> {
        positive("stillwater depth", self.stillwater_depth)?;
        height("height of the sill over the ground", self.sill_above_ground)?;
        Ok(self)
    }

    /// Height of the ground over the sill.
    #[must_use]
    pub fn ground(&self) -> Length {
        -self.sill_above_ground
    }

    /// Height of the stillwater surface over the sill.
    #[must_use]
    pub fn stillwater(&self) -> Length {
        self.stillwater_depth - self.sill_above_ground
    }

    /// Height of the crest at the wall over the sill, 1.2·d above the stillwater. A barrier
    /// that ends below it is passed over by every wave.
    #[must_use]
    pub fn crest(&self) -> Length {
        self.stillwater() + self.stillwater_depth * CREST
    }

    /// The greatest pressure, Cp·γ·d + 1.2·γ·d at the stillwater surface.
    #[must_use]
    pub fn greatest_pressure(&self) -> Pressure {
        self.pressure_of_depth() * (self.category.wave_pressure_coefficient() + CREST)
    }

    /// The force on each unit of width of the wall from the ground up, as the code rounds it.
    ///
    /// ```
    /// use sillmark::load::{Behind, BreakingWave, RiskCategory, Salinity};
    /// use sillmark::quantity::unit::{Length, foot, in_pounds_per_foot};
    /// let wave = BreakingWave {
    ///     stillwater_depth: Length::new::<foot>(2.0),
    ///     sill_above_ground: Length::new::<foot>(0.5),
    ///     category: RiskCategory::II,
    ///     weight: Salinity::Salt.specific_weight(),
    ///     behind: Behind::Dry,
    /// };
    /// let force = in_pounds_per_foot(wave.code_force());
    /// assert!((force - (1.1 * 2.8 + 2.4) * 64.0 * 4.0).abs() < 1e-9);
    /// let triangles = in_pounds_per_foot(wave.profile().resultant().force);
    /// assert!((triangles / force - 1.0).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn code_force(&self) -> LineLoad {
        let standing = match self.behind {
            Behind::Dry => 2.4,
            Behind::EqualWater => 1.9,
        };
        let blow = 1.1 * self.category.wave_pressure_coefficient();
        self.pressure_of_depth() * self.stillwater_depth * (blow + standing)
    }

    /// [`code_force`](Self::code_force) where the code lets it act, at the stillwater surface.
    #[must_use]
    pub fn code_resultant(&self) -> Resultant {
        let (force, height) = (self.code_force(), self.stillwater());
        Resultant {
            force,
            height,
            moment: force * height,
        }
    }

    /// The pressures from the ground to the crest, in heights over the sill. Water behind
    /// presses back.
    #[must_use]
    pub fn profile(&self) -> PressureProfile {
        let (ground, stillwater, crest) = (self.ground(), self.stillwater(), self.crest());
        let peak = self.pressure_of_depth() * self.category.wave_pressure_coefficient();
        let standing = PressureProfile::still_water_down_to(ground, crest, self.weight);
        let below = PressureProfile::band(PressureBand {
            from: ground,
            to: stillwater,
            at_from: Pressure::default(),
            at_to: peak,
        });
        let above = PressureProfile::band(PressureBand {
            from: stillwater,
            to: crest,
            at_from: peak,
            at_to: Pressure::default(),
        });
        let wave = standing.plus(&below).plus(&above);
        match self.behind {
            Behind::Dry => wave,
            Behind::EqualWater => wave.plus(
                &PressureProfile::still_water_down_to(ground, stillwater, self.weight).scaled(-1.0),
            ),
        }
    }

    fn pressure_of_depth(&self) -> Pressure {
        self.weight * self.stillwater_depth
    }
}
