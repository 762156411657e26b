//! EN 1999-1-1, 6.2.5 and 6.2.6.

use super::least::{Limit, Limits};
use crate::barrier::{Material, Section, SectionClass};
use crate::quantity::unit::{Force, Moment};

/// γM1 (EN 1999-1-1 6.1.3, from memory).
const GAMMA_M1: f64 = 1.10;

/// M = α·W·fo/γM1: the plastic modulus where a class 1 or 2 is stated with it, else the elastic
/// one (class 3). Beside a weld the softened strength counts for the whole section, on the safe
/// side of 6.2.9, which reduces the softened part alone.
pub(super) fn bending(section: &Section, material: &Material) -> Limits<Moment> {
    let elastic = section.elastic_modulus;
    let class = section.stated.class;
    let plastic = section
        .plastic_modulus
        .filter(|_| class.is_some_and(|class| class <= SectionClass::Class2));
    let limits = Limits::of(Limit {
        value: plastic.unwrap_or(elastic) * material.yield_strength / GAMMA_M1,
        name: match (class, plastic) {
            (_, Some(_)) => "yielding, on the plastic modulus",
            (Some(_), None) => "yielding, on the elastic modulus",
            (None, None) => "yielding, on the elastic modulus as of class 3",
        },
        reference: "EN 1999-1-1 6.2.5.1, γM1 1.10 (from memory)",
    })
    .without("rupture at holes (EN 1999-1-1 6.2.5.1)");
    if let Some(stress) = section.stated.buckling_stress {
        return limits.and(Limit {
            value: elastic * stress / GAMMA_M1,
            name: "the maker's buckling stress",
            reference: "stated in the kit, with γM1 1.10 of EN 1999-1-1 (from memory)",
        });
    }
    let limits = limits.without(
        "lateral-torsional buckling (EN 1999-1-1 6.3.2); it seldom governs closed hollow sections (common practice, no source)",
    );
    match class {
        Some(_) => limits,
        None => limits.without(
            "local buckling (EN 1999-1-1 6.1.4): no section_class is stated; class 4 carries less than the class 3 that is taken",
        ),
    }
}

/// V = Av·fo/(√3·γM1) (from memory).
pub(super) fn shear(section: &Section, material: &Material) -> Limits<Force> {
    Limits::of(Limit {
        value: section.shear_area * material.yield_strength / (3.0_f64.sqrt() * GAMMA_M1),
        name: "shear yielding",
        reference: "EN 1999-1-1 6.2.6, γM1 1.10 (from memory)",
    })
    .without("shear buckling of the webs (EN 1999-1-1 6.7.4)")
}
