//! The slips that figures are known to go wrong by.

use crate::load::RiskCategory;
use crate::quantity::LengthUnit;
use crate::statement::Choice;

/// What may have happened to the shift between two datums.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DatumSlip {
    /// It was not applied.
    NotApplied,
    /// It was applied with the other sign.
    WrongWay,
    /// It was applied to a level that already stood on the datum.
    OnceTooOften,
}

/// What may have happened to feet and metres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitSlip {
    /// The number is one of metres.
    NumberIsMetres,
    /// The number is one of feet.
    NumberIsFeet,
    /// It was converted from feet to metres once too often.
    ToMetresTwice,
    /// It was converted from metres to feet once too often.
    ToFeetTwice,
}

/// Whose figures a finding rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// Those of the assessment.
    Ours,
    /// The proposal's own.
    Theirs,
}

/// What may have happened to the formula of a load; h is the depth over the foot, d the still
/// water over the ground, γ the weight of water, Cp the wave coefficient.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadSlip {
    /// Pressure: γ·h/2, the mean for the greatest.
    MeanPressure,
    /// Force: γ·h², the triangle not halved.
    NotHalved,
    /// Force: γ·h/2 with the depth in a unit, where its square belongs.
    DepthForSquare(LengthUnit),
    /// Force: γ·h, the pressure for the force.
    PressureForForce(LengthUnit),
    /// Moment: γ·h³/3, the triangle not halved, or its arm taken from the surface.
    MomentNotHalved,
    /// Moment: γ·h³/4, the force taken at half the depth.
    ArmAtHalfDepth,
    /// Moment: γ·h²/6, the square where the cube belongs.
    SquareForCube(LengthUnit),
    /// Breaking waves: depth for its square in both terms.
    WaveDepthForSquare(LengthUnit),
    /// Breaking waves: depth for its square in the term of the wave's blow.
    WaveBlowDepthForSquare(LengthUnit),
    /// Breaking waves: depth for its square in the term of the standing water.
    WaveStandingDepthForSquare(LengthUnit),
    /// Breaking waves: still water added though it is in the formula.
    WaveStillWaterAgain,
    /// Breaking waves: the coefficient of another risk category.
    WaveOtherCategory(RiskCategory),
    /// The weight of the other water, fresh or salt.
    OtherSalinity(&'static str),
    /// The load of still water, without the waves.
    StillWaterForWaves,
    /// The number of the depth is taken in another unit, feet for metres or metres for feet.
    DepthTakenIn(LengthUnit),
}

impl LoadSlip {
    /// What was done, as it may have been.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::MeanPressure => {
                "the mean pressure γ·h/2 is taken for the greatest, γ·h".to_owned()
            }
            Self::NotHalved => {
                "the pressure is taken over the whole depth and not halved: γ·h² for γ·h²/2"
                    .to_owned()
            }
            Self::DepthForSquare(unit) => {
                format!("depth stands where depth squared belongs: γ·h/2 for γ·h²/2, h in {unit}")
            }
            Self::PressureForForce(unit) => {
                format!("the pressure γ·h is taken for the force γ·h²/2, h in {unit}")
            }
            Self::MomentNotHalved => {
                "the force is not halved, or its arm is taken from the surface: γ·h³/3 for γ·h³/6"
                    .to_owned()
            }
            Self::ArmAtHalfDepth => {
                "the force acts at half the depth: γ·h³/4 for γ·h³/6".to_owned()
            }
            Self::SquareForCube(unit) => {
                format!(
                    "depth squared stands where its cube belongs: γ·h²/6 for γ·h³/6, h in {unit}"
                )
            }
            Self::WaveDepthForSquare(unit) => {
                format!(
                    "depth stands where depth squared belongs: 1.1·Cp·γ·d + 2.4·γ·d, d in {unit}"
                )
            }
            Self::WaveBlowDepthForSquare(unit) => {
                format!(
                    "depth stands where depth squared belongs in the first term: 1.1·Cp·γ·d + 2.4·γ·d², d in {unit}"
                )
            }
            Self::WaveStandingDepthForSquare(unit) => {
                format!(
                    "depth stands where depth squared belongs in the second term: 1.1·Cp·γ·d² + 2.4·γ·d, d in {unit}"
                )
            }
            Self::WaveStillWaterAgain => {
                "still water γ·d²/2 is added, though the wave formula holds it".to_owned()
            }
            Self::WaveOtherCategory(category) => {
                format!("Cp is that of risk category {}", category.word())
            }
            Self::OtherSalinity(water) => format!("the water is {water}"),
            Self::StillWaterForWaves => "the waves are left out: γ·d²/2".to_owned(),
            Self::DepthTakenIn(unit) => format!("the number of its depth is taken in {unit}"),
        }
    }

    /// The clause of the right formula.
    #[must_use]
    pub const fn reference(self) -> &'static str {
        match self {
            Self::WaveDepthForSquare(_)
            | Self::WaveBlowDepthForSquare(_)
            | Self::WaveStandingDepthForSquare(_)
            | Self::WaveStillWaterAgain
            | Self::WaveOtherCategory(_)
            | Self::StillWaterForWaves => WAVE_REFERENCE,
            Self::DepthTakenIn(_) => FOOT_REFERENCE,
            _ => STILL_REFERENCE,
        }
    }
}

/// Where the length of a foot stands.
pub(super) const FOOT_REFERENCE: &str =
    "1 ft = 0.3048 m (international yard and pound agreement, 1959)";

/// Where the load of still water stands.
pub(in crate::review) const STILL_REFERENCE: &str = "p = γ·h, f = γ·h²/2, m = γ·h³/6: ASCE 7-10 section 5.4.2; FEMA P-55 (2011) vol. II Eq. 8.3 (equation number from memory)";

/// Where the load of breaking waves stands.
pub(in crate::review) const WAVE_REFERENCE: &str = "1.1·Cp·γ·d² + 2.4·γ·d² with still water in it: FEMA P-55 (2011) vol. II Eq. 8.6a, ASCE 7 section 5.4.4.2; Cp 3.2 seen, the others from memory";
