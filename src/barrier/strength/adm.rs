//! Aluminum Design Manual 2020, Part I, chapters F and G, building structures.

use super::StrengthBasis;
use super::least::{Limit, Limits};
use crate::barrier::{Material, Section};
use crate::quantity::unit::{Force, Moment};

/// The factors on one kind of limit.
struct Safety {
    /// Ω, which divides for allowable strength.
    omega: f64,
    /// φ, which multiplies for design strength.
    phi: f64,
}

/// All flexural limit states but rupture (ADM 2020 F.1, seen); shear the same (G.1, from
/// memory).
const YIELDING: Safety = Safety {
    omega: 1.65,
    phi: 0.90,
};

/// Rupture (ADM 2020 F.1, seen; shear G.1, from memory).
const RUPTURE: Safety = Safety {
    omega: 1.95,
    phi: 0.75,
};

/// Tension coefficient kt of the 6xxx alloys here: no reduction (ADM 2020 table A.3.3, from
/// memory).
const TENSION_COEFFICIENT: f64 = 1.0;

/// The most that Z may count for over S (ADM 2020 F.2, seen).
const SHAPE_CAP: f64 = 1.5;

/// Shear strength over tensile strength (ADM 2020 table A.3.3 note, from memory).
const SHEAR_PART: f64 = 0.6;

impl Safety {
    fn of(&self, basis: StrengthBasis) -> f64 {
        match basis {
            StrengthBasis::Allowable => 1.0 / self.omega,
            StrengthBasis::Design => self.phi,
        }
    }
}

/// Yielding and rupture by F.2, and the maker's buckling stress by F.3 and F.4.
///
/// The elastic modulus of the farthest fibre stands for both St and Sc, and Fty for Fcy, which
/// is not smaller for these tempers (from memory). Without a plastic modulus the elastic one
/// stands for it, on the safe side.
pub(super) fn bending(
    section: &Section,
    material: &Material,
    basis: StrengthBasis,
) -> Limits<Moment> {
    let elastic = section.elastic_modulus;
    let plastic = section.plastic_modulus;
    let (modulus, yielding, rupture) = match plastic {
        Some(plastic) => (plastic, "yielding", "rupture"),
        None => (
            elastic,
            "yielding, on the elastic modulus since no plastic one is stated",
            "rupture, on the elastic modulus since no plastic one is stated",
        ),
    };
    let limits = Limits::of(Limit {
        value: modulus * material.yield_strength * YIELDING.of(basis),
        name: yielding,
        reference: "ADM 2020 F.2 and F.1 (seen)",
    })
    .and(Limit {
        value: elastic * SHAPE_CAP * material.yield_strength * YIELDING.of(basis),
        name: "yielding, at 1.5 times the elastic modulus",
        reference: "ADM 2020 F.2 and F.1 (seen)",
    })
    .and(Limit {
        value: modulus * material.ultimate_strength / TENSION_COEFFICIENT * RUPTURE.of(basis),
        name: rupture,
        reference: "ADM 2020 F.2 and F.1 (seen); kt 1.0 (from memory)",
    });
    match section.stated.buckling_stress {
        Some(stress) => limits.and(Limit {
            value: elastic * stress * YIELDING.of(basis),
            name: "the maker's buckling stress",
            reference: "stated in the kit, with the factors of ADM 2020 F.1 (seen)",
        }),
        None => limits
            .without("local buckling of the walls (ADM 2020 F.3): no buckling_stress is stated")
            .without(
                "lateral-torsional buckling (ADM 2020 F.4): no buckling_stress is stated; it seldom governs closed hollow sections (common practice, no source)",
            ),
    }
}

/// Yielding and rupture of the webs, chapter G (from memory).
pub(super) fn shear(section: &Section, material: &Material, basis: StrengthBasis) -> Limits<Force> {
    let area = section.shear_area * SHEAR_PART;
    let reference = "ADM 2020 G.2 and G.1 (from memory)";
    Limits::of(Limit {
        value: area * material.yield_strength * YIELDING.of(basis),
        name: "shear yielding",
        reference,
    })
    .and(Limit {
        value: area * material.ultimate_strength / TENSION_COEFFICIENT * RUPTURE.of(basis),
        name: "shear rupture",
        reference,
    })
    .without("shear buckling of the webs (ADM 2020 G.2)")
}
