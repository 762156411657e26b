//! Saturated soil against an opening below the ground.

use super::error::not_negative;
use super::{LoadError, PressureBand, PressureProfile};
use crate::quantity::unit::pounds_per_cubic_foot;
use crate::quantity::{Length, Pressure, SpecificWeight};
use crate::statement::Choice;

/// Kinds of soil by how they press when they are under water.
///
/// Groups and weights: FEMA P-259 chapter 4, equivalent fluid weight of submerged soil and
/// water (from memory, the table's number too uncertain to name).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SoilGroup {
    /// Clean sand and gravel: 75 pcf.
    CleanSandOrGravel,
    /// Sand and gravel with fines, of restricted permeability: 77 pcf.
    SandOrGravelWithFines,
    /// Stiff residual silt or clay, silty fine sand, clayey sand or gravel: 82 pcf.
    StiffSiltOrClay,
    /// Very soft to soft clay, silty clay, organic silt and clay: 106 pcf.
    SoftClay,
    /// Medium to stiff clay in chunks, kept from taking up water: 142 pcf.
    ClayChunks,
}

impl Choice for SoilGroup {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("clean sand or gravel", Self::CleanSandOrGravel),
        ("sand or gravel with fines", Self::SandOrGravelWithFines),
        ("stiff silt or clay", Self::StiffSiltOrClay),
        ("soft clay", Self::SoftClay),
        ("clay chunks", Self::ClayChunks),
    ];
}

impl SoilGroup {
    /// Where the weights stand.
    pub const SOURCE: &'static str =
        "FEMA P-259 chapter 4: equivalent fluid weight of submerged soil and water by soil group";

    /// Weight of a fluid that would press as the soil and the water in it do.
    ///
    /// ```
    /// use sillmark::load::SoilGroup;
    /// use sillmark::quantity::unit::pounds_per_cubic_foot;
    /// let weight = SoilGroup::SoftClay.equivalent_fluid_weight();
    /// assert_eq!(weight, pounds_per_cubic_foot(106.0));
    /// ```
    #[must_use]
    pub fn equivalent_fluid_weight(self) -> SpecificWeight {
        pounds_per_cubic_foot(match self {
            Self::CleanSandOrGravel => 75.0,
            Self::SandOrGravelWithFines => 77.0,
            Self::StiffSiltOrClay => 82.0,
            Self::SoftClay => 106.0,
            Self::ClayChunks => 142.0,
        })
    }

    /// The classes of the unified soil classification that belong to the group.
    #[must_use]
    pub const fn classes(self) -> &'static [&'static str] {
        match self {
            Self::CleanSandOrGravel => &["GW", "GP", "SW", "SP"],
            Self::SandOrGravelWithFines => &["GM", "GM-GP", "SM", "SM-SP"],
            Self::StiffSiltOrClay => &["CL", "ML", "CH", "MH", "SM", "SC", "GC"],
            Self::SoftClay => &["CL", "ML", "OL", "CH", "MH", "OH"],
            Self::ClayChunks => &["CL", "CH"],
        }
    }
}

/// What saturated soil adds to the water: (S − γ) times the depth below the ground, from
/// the sill up to the ground `buried` above it.
///
/// Together with still water of depth H over the sill it gives the force
/// F = γ·H²/2 + (S − γ)·D²/2 on each unit of width, D being the buried height. It holds
/// where the water stands at the ground or above it, so that all of the soil is saturated.
///
/// Reference: FEMA P-259 chapter 4 (from memory).
///
/// # Errors
/// [`LoadError`] for a buried height that is negative or not a number.
///
/// ```
/// use sillmark::load::{PressureProfile, Salinity, SoilGroup, saturated_soil};
/// use sillmark::quantity::unit::{Length, foot, in_pounds_per_foot};
/// let water = Salinity::Fresh.specific_weight();
/// let soil = saturated_soil(Length::new::<foot>(4.0), SoilGroup::CleanSandOrGravel, water)?;
/// let both = soil.plus(&PressureProfile::still_water(Length::new::<foot>(5.0), water));
/// assert!((in_pounds_per_foot(both.resultant().force) - 880.8).abs() < 1e-9);
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
pub fn saturated_soil(
    buried: Length,
    group: SoilGroup,
    water: SpecificWeight,
) -> Result<PressureProfile, LoadError> {
    let buried = not_negative("buried height", buried)?;
    Ok(PressureProfile::band(PressureBand {
        from: Length::default(),
        to: buried,
        at_from: (group.equivalent_fluid_weight() - water) * buried,
        at_to: Pressure::default(),
    }))
}
