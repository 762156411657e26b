//! Structural steel, for posts: ANSI/AISC 360 chapters F and G, EN 1993-1-1 6.2. All from
//! memory.

use super::StrengthBasis;
use super::least::{Limit, Limits};
use crate::barrier::{Material, Section, SectionClass};
use crate::quantity::unit::{Force, Moment};

/// Ω and φ of flexure and shear (AISC 360 F1 and G1, from memory).
const OMEGA: f64 = 1.67;
const PHI: f64 = 0.90;

/// The most that Z may count for over S (AISC 360 F11, from memory).
const SHAPE_CAP: f64 = 1.6;

/// γM0 (EN 1993-1-1 6.1, from memory).
const GAMMA_M0: f64 = 1.00;

fn safety(basis: StrengthBasis) -> f64 {
    match basis {
        StrengthBasis::Allowable => 1.0 / OMEGA,
        StrengthBasis::Design => PHI,
    }
}

/// The plastic moment, Z·Fy, no more than 1.6·S·Fy; without Z the elastic moment.
pub(super) fn bending_aisc(
    section: &Section,
    material: &Material,
    basis: StrengthBasis,
) -> Limits<Moment> {
    let elastic = section.elastic_modulus;
    let (modulus, name) = match section.plastic_modulus {
        Some(plastic) => (plastic, "yielding"),
        None => (
            elastic,
            "yielding, on the elastic modulus since no plastic one is stated",
        ),
    };
    let reference = "AISC 360 F1, F7 and F11 (from memory)";
    let limits = Limits::of(Limit {
        value: modulus * material.yield_strength * safety(basis),
        name,
        reference,
    })
    .and(Limit {
        value: elastic * SHAPE_CAP * material.yield_strength * safety(basis),
        name: "yielding, at 1.6 times the elastic modulus",
        reference,
    });
    // The classes of EN 1993 say nothing here.
    buckling(limits, section, None, safety(basis))
}

/// W·fy/γM0, on the plastic modulus where a class 1 or 2 is stated with it.
pub(super) fn bending_en(section: &Section, material: &Material) -> Limits<Moment> {
    let plastic = section.plastic_modulus.filter(|_| {
        let class = section.stated.class;
        class.is_some_and(|class| class <= SectionClass::Class2)
    });
    let limits = Limits::of(Limit {
        value: plastic.unwrap_or(section.elastic_modulus) * material.yield_strength / GAMMA_M0,
        name: if plastic.is_some() {
            "yielding, on the plastic modulus"
        } else {
            "yielding, on the elastic modulus"
        },
        reference: "EN 1993-1-1 6.2.5, γM0 1.00 (from memory)",
    });
    buckling(limits, section, section.stated.class, 1.0 / GAMMA_M0)
}

/// What the properties do not tell: the maker's stress, or an open item each.
fn buckling(
    limits: Limits<Moment>,
    section: &Section,
    class: Option<SectionClass>,
    safety: f64,
) -> Limits<Moment> {
    if let Some(stress) = section.stated.buckling_stress {
        return limits.and(Limit {
            value: section.elastic_modulus * stress * safety,
            name: "the maker's buckling stress",
            reference: "stated in the kit",
        });
    }
    let limits = limits.without("lateral-torsional buckling: no buckling_stress is stated");
    match class {
        Some(_) => limits,
        None => limits.without("local buckling of the walls: nothing is stated that covers it"),
    }
}

/// 0.6·Fy·Aw.
pub(super) fn shear_aisc(
    section: &Section,
    material: &Material,
    basis: StrengthBasis,
) -> Limits<Force> {
    Limits::of(Limit {
        value: section.shear_area * 0.6 * material.yield_strength * safety(basis),
        name: "shear yielding",
        reference: "AISC 360 G1 and G4 (from memory)",
    })
    .without("shear buckling of the webs (AISC 360 G2 and G4)")
}

/// Av·fy/(√3·γM0).
pub(super) fn shear_en(section: &Section, material: &Material) -> Limits<Force> {
    Limits::of(Limit {
        value: section.shear_area * material.yield_strength / (3.0_f64.sqrt() * GAMMA_M0),
        name: "shear yielding",
        reference: "EN 1993-1-1 6.2.6, γM0 1.00 (from memory)",
    })
    .without("shear buckling of the webs (EN 1993-1-5)")
}
