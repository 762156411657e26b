//! Which limit governs, and what is said to be open.

use approx::assert_relative_eq;
use sillmark::barrier::{
    Capacity, Kit, Material, MaterialStandard, Section, SectionClass, StrengthBasis,
    bending_capacity, materials, shear_capacity,
};
use sillmark::quantity::unit::Moment;
use sillmark::quantity::{
    parse_area, parse_moment, parse_second_moment, parse_section_modulus, parse_stress,
};

fn material(id: &str) -> Material {
    let known = materials().unwrap();
    known.into_iter().find(|row| row.id == id).unwrap()
}

/// Elastic modulus 1 in³, plastic as stated.
fn section(plastic: Option<&str>) -> Section {
    Section {
        area: parse_area("2 in2").unwrap(),
        second_moment: parse_second_moment("1 in4").unwrap(),
        elastic_modulus: parse_section_modulus("1 in3").unwrap(),
        plastic_modulus: plastic.map(|text| parse_section_modulus(text).unwrap()),
        shear_area: parse_area("1 in2").unwrap(),
        stated: sillmark::barrier::StatedBending::default(),
    }
}

fn allowable(section: &Section, id: &str) -> Capacity<Moment> {
    bending_capacity(section, &material(id), StrengthBasis::Allowable).unwrap()
}

fn inch_kips(moment: Moment) -> f64 {
    (moment / parse_moment("1 kip-in").unwrap()).value
}

#[test]
fn the_plastic_modulus_counts_to_one_and_a_half_times_the_elastic() {
    let capacity = allowable(&section(Some("1.2 in3")), "6063-T6 (ADM)");
    assert_relative_eq!(
        inch_kips(capacity.value),
        1.2 * 25.0 / 1.65,
        max_relative = 1e-12
    );
    assert_eq!(capacity.governed_by, "yielding");
    let capacity = allowable(&section(Some("1.7 in3")), "6063-T6 (ADM)");
    assert_relative_eq!(
        inch_kips(capacity.value),
        1.5 * 25.0 / 1.65,
        max_relative = 1e-12
    );
    assert_eq!(
        capacity.governed_by,
        "yielding, at 1.5 times the elastic modulus"
    );
}

#[test]
fn rupture_has_no_cap_of_its_own() {
    // At 1.5 S yielding, 1.5·35/1.65 = 31.8, is below rupture, 1.7·38/1.95 = 33.1.
    let capacity = allowable(&section(Some("1.7 in3")), "6061-T6 (ADM)");
    assert_relative_eq!(
        inch_kips(capacity.value),
        1.5 * 35.0 / 1.65,
        max_relative = 1e-12
    );
    let capacity = allowable(&section(Some("1.2 in3")), "6061-T6 (ADM)");
    assert_relative_eq!(
        inch_kips(capacity.value),
        1.2 * 38.0 / 1.95,
        max_relative = 1e-12
    );
    assert_eq!(capacity.governed_by, "rupture");
}

#[test]
fn loads_with_factors_have_their_own_factors() {
    let design = |id| {
        let section = section(Some("1.2 in3"));
        bending_capacity(&section, &material(id), StrengthBasis::Design).unwrap()
    };
    assert_relative_eq!(
        inch_kips(design("6063-T6 (ADM)").value),
        1.2 * 0.90 * 25.0,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        inch_kips(design("6061-T6 (ADM)").value),
        1.2 * 0.75 * 38.0,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        inch_kips(design("A36 (AISC)").value),
        1.2 * 0.90 * 36.0,
        max_relative = 1e-12
    );
}

#[test]
fn buckling_is_open_until_the_maker_states_it() {
    let mut stated = section(Some("1.2 in3"));
    assert_eq!(allowable(&stated, "6063-T6 (ADM)").not_checked.len(), 2);
    stated.stated.buckling_stress = Some(parse_stress("18 ksi").unwrap());
    let capacity = allowable(&stated, "6063-T6 (ADM)");
    assert!(capacity.not_checked.is_empty());
    assert_eq!(capacity.governed_by, "the maker's buckling stress");
    assert_relative_eq!(inch_kips(capacity.value), 18.0 / 1.65, max_relative = 1e-12);
}

#[test]
fn the_makers_moment_is_a_further_limit_and_no_licence() {
    let mut stated = section(Some("1.2 in3"));
    stated.stated.allowable_moment = Some(parse_moment("900 ft-lb").unwrap());
    let capacity = allowable(&stated, "6063-T6 (ADM)");
    assert_relative_eq!(inch_kips(capacity.value), 10.8, max_relative = 1e-12);
    assert_eq!(capacity.governed_by, "the maker's moment");
    assert!(capacity.not_checked.is_empty());
    stated.stated.allowable_moment = Some(parse_moment("9000 ft-lb").unwrap());
    let capacity = allowable(&stated, "6063-T6 (ADM)");
    assert_eq!(capacity.governed_by, "yielding");
    // For the other loads it says nothing, and that is said.
    let capacity =
        bending_capacity(&stated, &material("6063-T6 (ADM)"), StrengthBasis::Design).unwrap();
    assert!(
        capacity
            .not_checked
            .iter()
            .any(|open| open.starts_with("the maker's moment"))
    );
}

#[test]
fn european_sections_turn_plastic_only_in_class_1_and_2() {
    let alloy = material("EN AW-6063 T66 up to 10 mm");
    let mut section = section(Some("1.2 in3"));
    let elastic = section.elastic_modulus * alloy.yield_strength / 1.10;
    let bending =
        |section: &Section| bending_capacity(section, &alloy, StrengthBasis::Design).unwrap();
    let unknown = bending(&section);
    assert_relative_eq!(unknown.value.value, elastic.value, max_relative = 1e-12);
    assert!(
        unknown
            .not_checked
            .iter()
            .any(|open| open.contains("section_class"))
    );
    for (class, factor) in [
        (SectionClass::Class1, 1.2),
        (SectionClass::Class2, 1.2),
        (SectionClass::Class3, 1.0),
    ] {
        section.stated.class = Some(class);
        let capacity = bending(&section);
        assert_relative_eq!(
            capacity.value.value,
            factor * elastic.value,
            max_relative = 1e-12
        );
        assert!(
            !capacity
                .not_checked
                .iter()
                .any(|open| open.contains("section_class"))
        );
    }
    section.plastic_modulus = None;
    section.stated.class = Some(SectionClass::Class1);
    assert_relative_eq!(
        bending(&section).value.value,
        elastic.value,
        max_relative = 1e-12
    );
}

#[test]
fn european_standards_have_no_allowable_strength() {
    for row in materials().unwrap() {
        let european = matches!(
            row.standard,
            MaterialStandard::En1999 | MaterialStandard::En1993
        );
        let section = section(None);
        let bending = bending_capacity(&section, &row, StrengthBasis::Allowable);
        let shear = shear_capacity(&section, &row, StrengthBasis::Allowable);
        assert_eq!(bending.is_err(), european, "{}", row.id);
        assert_eq!(shear.is_err(), european, "{}", row.id);
        assert!(bending_capacity(&section, &row, StrengthBasis::Design).is_ok());
    }
    let error = bending_capacity(
        &section(None),
        &material("EN AW-6061 T6 up to 20 mm"),
        StrengthBasis::Allowable,
    )
    .unwrap_err();
    assert_eq!(
        error.to_string(),
        "\"EN 1999-1-1\" has no allowable strength for the material \"EN AW-6061 T6 up to 20 mm\"; accepted: loads with their factors"
    );
}

#[test]
fn no_capacity_is_without_its_reference_and_its_confidence() {
    for row in materials().unwrap() {
        let section = section(None);
        let bending = bending_capacity(&section, &row, StrengthBasis::Design).unwrap();
        let shear = shear_capacity(&section, &row, StrengthBasis::Design).unwrap();
        for reference in [bending.reference, shear.reference] {
            assert!(
                reference.contains("seen") || reference.contains("from memory"),
                "{reference}"
            );
        }
        assert!(!shear.not_checked.is_empty());
    }
}

/// By hand: two and a half feet of water push 62.4 pcf · 2.5³ / 6 = 162.5 ft-lb a foot of wall
/// into the foot of a post, at 10 ft; four feet would be 6656 ft-lb, which it takes only with a
/// brace. The lowest 6 in of four feet carry 62.4 · 3.75 · 0.5 = 117 lb/ft over 10 ft, 1463 ft-lb.
#[test]
fn the_demonstration_kit_holds_what_it_is_there_to_show() {
    let kit = Kit::demonstration().unwrap();
    let post = kit.posts.intermediate.unwrap();
    let capacity =
        bending_capacity(&post.section, &post.material, StrengthBasis::Allowable).unwrap();
    assert!(capacity.value > parse_moment("1625 ft-lb").unwrap());
    assert!(capacity.value < parse_moment("6656 ft-lb").unwrap());
    let plank = kit.plank;
    let capacity =
        bending_capacity(&plank.section, &plank.material, StrengthBasis::Allowable).unwrap();
    assert!(capacity.value > parse_moment("1463 ft-lb").unwrap());
}

/// By hand: 1.2 m of water push 9.81 · 1.2³ / 6 = 2.825 kN·m a metre into the foot of a post, at
/// 2.4 m and with a factor of 1.5 10.2 kN·m. At its weld the post has 115 N/mm², so it takes
/// 172.2 cm³ · 115 / 1.10 = 18.00 kN·m.
#[test]
fn the_kit_in_si_units_is_softened_where_it_is_welded() {
    let text = include_str!("../../data/kits/demonstration-si.toml");
    let kit = Kit::from_toml("kit.toml", text).unwrap();
    let post = kit.posts.intermediate.unwrap();
    assert!(post.material.at_weld && !kit.plank.material.at_weld);
    let capacity = bending_capacity(&post.section, &post.material, StrengthBasis::Design).unwrap();
    let kilonewton_metre = parse_moment("1 kN·m").unwrap();
    assert_relative_eq!(
        (capacity.value / kilonewton_metre).value,
        18.00,
        epsilon = 0.005
    );
    // 40 mm of pocket less 8 mm behind the plank's end.
    assert_relative_eq!(post.engagement().value, 0.032, max_relative = 1e-12);
}
