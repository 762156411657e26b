//! What a section of a material carries, by the rules of the material's own standard.
//!
//! | standard | bending | shear |
//! | --- | --- | --- |
//! | ADM 2020 | F.2: least of Z·Fty, 1.5·S·Fty (Ω 1.65, φ 0.90) and Z·Ftu/kt (Ω 1.95, φ 0.75) | 0.6·Fty·Av and 0.6·Ftu·Av, same factors |
//! | EN 1999-1-1 | α·W·fo/γM1, γM1 1.10 | Av·fo/(√3·γM1) |
//! | AISC 360 | least of Z·Fy and 1.6·S·Fy (Ω 1.67, φ 0.90) | 0.6·Fy·Av, same factors |
//! | EN 1993-1-1 | W·fy/γM0, γM0 1.00 | Av·fy/(√3·γM0) |
//!
//! Buckling of a thin wall and turning sideways do not follow from these properties. They are
//! taken from the maker where he states them and are otherwise listed in
//! [`Capacity::not_checked`].

mod adm;
mod en1999;
mod least;
mod steel;

use super::{Material, MaterialStandard, Section};
use crate::load::ResistanceBasis;
use crate::quantity::unit::{Force, Moment};

/// What kind of load a capacity is compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StrengthBasis {
    /// Loads of allowable stress design: M ≤ Mn/Ω.
    Allowable,
    /// Loads with their factors: M ≤ φ·Mn, or M ≤ W·f/γM.
    Design,
}

/// What a section carries.
#[derive(Clone, Debug, PartialEq)]
pub struct Capacity<Value> {
    /// The moment or the force.
    pub value: Value,
    /// The limit that it comes from.
    pub governed_by: &'static str,
    /// Standard and clause, and how sure that is.
    pub reference: &'static str,
    /// Limits that were not compared; an engineer has to.
    pub not_checked: Vec<&'static str>,
}

/// Why there is no capacity.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StrengthError {
    /// The standard knows loads with factors only.
    #[error(
        "{standard:?} has no allowable strength for the material {material:?}; accepted: loads with their factors"
    )]
    NoAllowable {
        /// The standard.
        standard: &'static str,
        /// The material's id.
        material: String,
    },
}

impl MaterialStandard {
    /// Whether the standard has allowable strengths beside those for loads with factors.
    #[must_use]
    pub const fn has_allowable(self) -> bool {
        matches!(self, Self::Adm | Self::Aisc360)
    }

    /// The kind of resistance that its strengths are, which load factors have to go with.
    #[must_use]
    pub const fn resistance(self) -> ResistanceBasis {
        if self.has_allowable() {
            ResistanceBasis::SafetyAndResistanceFactors
        } else {
            ResistanceBasis::PartialFactors
        }
    }
}

/// The greatest bending moment that `section` of `material` takes.
///
/// # Errors
/// [`StrengthError`] where the standard has no strength on that basis.
///
/// ```
/// use sillmark::barrier::{Kit, StrengthBasis, bending_capacity};
/// use sillmark::quantity::unit::{foot, pound_force, Force, Length};
/// let plank = Kit::demonstration()?.plank; // Z 1.693 in³, 6063-T6: Fty 25 ksi
/// let capacity = bending_capacity(&plank.section, &plank.material, StrengthBasis::Allowable)?;
/// let foot_pound = Force::new::<pound_force>(1.0) * Length::new::<foot>(1.0);
/// // 1.693 · 25,000 / 1.65 / 12
/// assert!(((capacity.value / foot_pound).value - 2137.6).abs() < 0.1);
/// assert_eq!(capacity.governed_by, "yielding");
/// assert!(capacity.not_checked[0].starts_with("local buckling"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn bending_capacity(
    section: &Section,
    material: &Material,
    basis: StrengthBasis,
) -> Result<Capacity<Moment>, StrengthError> {
    known_basis(material, basis)?;
    let limits = match material.standard {
        MaterialStandard::Adm => adm::bending(section, material, basis),
        MaterialStandard::En1999 => en1999::bending(section, material),
        MaterialStandard::Aisc360 => steel::bending_aisc(section, material, basis),
        MaterialStandard::En1993 => steel::bending_en(section, material),
    };
    Ok(limits.with_maker(&section.stated, basis).least())
}

/// The greatest shear force that the webs of `section` take.
///
/// # Errors
/// As [`bending_capacity`].
pub fn shear_capacity(
    section: &Section,
    material: &Material,
    basis: StrengthBasis,
) -> Result<Capacity<Force>, StrengthError> {
    known_basis(material, basis)?;
    let limits = match material.standard {
        MaterialStandard::Adm => adm::shear(section, material, basis),
        MaterialStandard::En1999 => en1999::shear(section, material),
        MaterialStandard::Aisc360 => steel::shear_aisc(section, material, basis),
        MaterialStandard::En1993 => steel::shear_en(section, material),
    };
    Ok(limits.least())
}

fn known_basis(material: &Material, basis: StrengthBasis) -> Result<(), StrengthError> {
    if basis == StrengthBasis::Allowable && !material.standard.has_allowable() {
        return Err(StrengthError::NoAllowable {
            standard: crate::statement::Choice::word(material.standard),
            material: material.id.clone(),
        });
    }
    Ok(())
}
