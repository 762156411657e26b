//! Allowable and design stresses that follow from the tables of strengths, worked by hand from
//! the sources that are named beside them.

use approx::assert_abs_diff_eq;
use sillmark::barrier::{
    Capacity, Material, Section, StatedBending, StrengthBasis, bending_capacity, materials,
    shear_capacity,
};
use sillmark::quantity::unit::{Moment, pound_per_square_inch};
use sillmark::quantity::{
    Pressure, parse_area, parse_second_moment, parse_section_modulus, parse_stress,
};

fn material(id: &str) -> Material {
    let known = materials().unwrap();
    known.into_iter().find(|row| row.id == id).unwrap()
}

fn section(plastic: Option<&str>) -> Section {
    Section {
        area: parse_area("2 in2").unwrap(),
        second_moment: parse_second_moment("1 in4").unwrap(),
        elastic_modulus: parse_section_modulus("1 in3").unwrap(),
        plastic_modulus: plastic.map(|text| parse_section_modulus(text).unwrap()),
        shear_area: parse_area("1 in2").unwrap(),
        stated: StatedBending::default(),
    }
}

fn bending(id: &str, basis: StrengthBasis) -> Capacity<Moment> {
    bending_capacity(&section(None), &material(id), basis).unwrap()
}

/// The moment over the elastic modulus of 1 in³.
fn stress(capacity: &Capacity<Moment>) -> Pressure {
    capacity.value / parse_section_modulus("1 in3").unwrap()
}

fn ksi(stress: Pressure) -> f64 {
    stress.get::<pound_per_square_inch>() / 1000.0
}

/// Aluminum Design Manual 2020, Part I, chapter F: Ω 1.65 for yielding, 1.95 for rupture; strengths
/// of an extruder's table. On the elastic modulus: 16/1.65, 15/1.65, 25/1.65, and for 6061-T6
/// and 6005A-T61 the rupture at 38/1.95 below the yield at 35/1.65 = 21.21.
#[test]
fn allowable_stresses_of_aluminium_on_the_elastic_modulus() {
    for (id, expected, governed_by) in [
        ("6063-T5 up to 0.500 in (ADM)", 9.70, "yielding"),
        ("6063-T5 over 0.500 in (ADM)", 9.09, "yielding"),
        ("6063-T6 (ADM)", 15.15, "yielding"),
        ("6061-T6 (ADM)", 19.49, "rupture"),
        ("6005A-T61 (ADM)", 19.49, "rupture"),
    ] {
        let capacity = bending(id, StrengthBasis::Allowable);
        assert_abs_diff_eq!(ksi(stress(&capacity)), expected, epsilon = 0.005);
        assert!(capacity.governed_by.starts_with(governed_by), "{id}");
    }
}

/// The same chapter, F.2: the least of Z·Fty and 1.5·S·Fty over 1.65 and Z·Ftu/kt over 1.95. By
/// hand for Z = 1.3 in³, S = 1 in³ of 6063-T6: 1.3·25/1.65 = 19.697, 1.5·25/1.65 = 22.727,
/// 1.3·30/1.95 = 20.000 kip-in.
#[test]
fn bending_by_the_plastic_modulus() {
    let plastic = section(Some("1.3 in3"));
    let capacity = bending_capacity(
        &plastic,
        &material("6063-T6 (ADM)"),
        StrengthBasis::Allowable,
    )
    .unwrap();
    assert_abs_diff_eq!(ksi(stress(&capacity)), 19.697, epsilon = 0.0005);
    // With factors rupture and yielding come to the same: 1.3·30·0.75 = 1.3·25·0.90 = 29.25.
    let capacity =
        bending_capacity(&plastic, &material("6063-T6 (ADM)"), StrengthBasis::Design).unwrap();
    assert_abs_diff_eq!(ksi(stress(&capacity)), 29.25, epsilon = 0.0005);
}

/// EN 1999-1-1 table 3.2b, proof strengths over γM1 1.10 (from memory): 160 gives 145.45, 130
/// gives 118.18, 110 gives 100.00, 200 gives 181.82, 240 gives 218.18 N/mm².
#[test]
fn design_stresses_of_aluminium_in_europe() {
    let megapascal = parse_stress("1 MPa").unwrap();
    for (id, expected) in [
        ("EN AW-6060 T66 up to 3 mm", 145.45),
        ("EN AW-6063 T6 up to 25 mm", 145.45),
        ("EN AW-6063 T5 up to 3 mm", 118.18),
        ("EN AW-6063 T5 over 3 up to 25 mm", 100.00),
        ("EN AW-6063 T66 up to 10 mm", 181.82),
        ("EN AW-6061 T6 up to 20 mm", 218.18),
    ] {
        let design = stress(&bending(id, StrengthBasis::Design));
        assert_abs_diff_eq!((design / megapascal).value, expected, epsilon = 0.005);
    }
}

/// The rows that the second reading of EN 1999-1-1 table 3.2b gives: proof and ultimate strength,
/// and both beside a weld, in N/mm².
#[test]
fn strengths_beside_a_weld_in_europe() {
    for (id, row) in [
        ("EN AW-6060 T5 up to 5 mm", [120, 160, 50, 80]),
        ("EN AW-6060 T64 up to 15 mm", [120, 180, 60, 100]),
        ("EN AW-6061 T6 up to 20 mm", [240, 260, 115, 175]),
        ("EN AW-6063 T66 over 10 up to 25 mm", [180, 225, 75, 130]),
        (
            "EN AW-6005A T6 solid over 10 up to 25 mm",
            [200, 250, 115, 165],
        ),
        ("EN AW-6005A T6 hollow up to 5 mm", [215, 255, 115, 165]),
        ("EN AW-6106 T6 up to 10 mm", [200, 250, 95, 160]),
    ] {
        let alloy = material(id);
        let softened = alloy.softened().unwrap();
        let strengths = [
            alloy.yield_strength,
            alloy.ultimate_strength,
            softened.yield_strength,
            softened.ultimate_strength,
        ];
        for (strength, expected) in strengths.into_iter().zip(row) {
            assert_eq!(
                strength,
                parse_stress(&format!("{expected} MPa")).unwrap(),
                "{id}"
            );
        }
        // A welded section bends at its softened strength.
        let design = bending_capacity(&section(None), &softened, StrengthBasis::Design).unwrap();
        assert_abs_diff_eq!(
            (stress(&design) / softened.yield_strength).value,
            1.0 / 1.10,
            epsilon = 1e-12
        );
    }
    assert!(material("6063-T6 (ADM)").softened().is_none());
}

/// The same name is not the same material: Fty of 6063-T5 is 16 ksi (110 N/mm²) in the United
/// States and fo of EN AW-6063 T5 130 N/mm² with thin walls.
#[test]
fn tables_of_two_continents_are_kept_apart() {
    let american = material("6063-T5 up to 0.500 in (ADM)").yield_strength;
    let european = material("EN AW-6063 T5 up to 3 mm").yield_strength;
    assert_abs_diff_eq!((european / american).value, 130.0 / 110.3, epsilon = 0.001);
}

/// Shear from memory: 0.6·25/1.65 = 9.091 ksi (ADM 2020 G.2); 200/(√3·1.10) = 104.97 N/mm²
/// (EN 1999-1-1 6.2.6); 0.6·36/1.67 = 12.934 ksi (AISC 360 G).
#[test]
fn shear_on_the_webs() {
    let shear = |id, basis| {
        let capacity = shear_capacity(&section(None), &material(id), basis).unwrap();
        ksi(capacity.value / parse_area("1 in2").unwrap())
    };
    assert_abs_diff_eq!(
        shear("6063-T6 (ADM)", StrengthBasis::Allowable),
        9.091,
        epsilon = 0.0005
    );
    assert_abs_diff_eq!(
        shear("A36 (AISC)", StrengthBasis::Allowable),
        12.934,
        epsilon = 0.0005
    );
    let megapascals = shear("EN AW-6063 T66 up to 10 mm", StrengthBasis::Design) * 6.894_757;
    assert_abs_diff_eq!(megapascals, 104.97, epsilon = 0.005);
}
