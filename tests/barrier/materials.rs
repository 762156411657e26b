//! The table of materials, and materials that a kit states for itself.

use std::collections::HashSet;

use sillmark::barrier::{Kit, MaterialStandard, materials};
use sillmark::quantity::unit::millimeter;
use sillmark::quantity::{Length, parse_stress};
use sillmark::statement::{Choice, Confidence};

const KIT: &str = include_str!("../../data/kits/demonstration.toml");

#[test]
fn every_row_is_of_one_standard_and_names_it_by_its_id() {
    let known = materials().unwrap();
    let ids: HashSet<_> = known.iter().map(|row| row.id.to_lowercase()).collect();
    assert_eq!(ids.len(), known.len(), "an id is there twice");
    for row in &known {
        let marked = match row.standard {
            MaterialStandard::Adm => row.id.ends_with("(ADM)"),
            MaterialStandard::En1999 => row.id.starts_with("EN AW-"),
            MaterialStandard::Aisc360 => row.id.ends_with("(AISC)"),
            MaterialStandard::En1993 => row.id.ends_with("(EN)"),
        };
        assert!(marked, "{} is of {}", row.id, row.standard.word());
        assert!(row.ultimate_strength >= row.yield_strength, "{}", row.id);
        if let Some(welded) = row.welded {
            assert!(welded.yield_strength <= row.yield_strength, "{}", row.id);
            assert!(
                welded.ultimate_strength <= row.ultimate_strength,
                "{}",
                row.id
            );
        }
    }
}

#[test]
fn one_alloy_has_ranges_of_thickness_that_neither_overlap_nor_leave_a_gap() {
    let known = materials().unwrap();
    let wall = |tenths: u32| Length::new::<millimeter>(f64::from(tenths) / 10.0);
    for (name, up_to) in [
        ("EN AW-6063 T5 ", 250),
        ("EN AW-6060 T66 ", 250),
        ("EN AW-6005A T6 solid ", 250),
        ("EN AW-6005A T6 hollow ", 100),
        ("EN AW-6082 T6 ", 150),
        ("6063-T5 ", 254),
    ] {
        let rows: Vec<_> = known
            .iter()
            .filter(|row| row.id.starts_with(name))
            .collect();
        assert!(rows.len() > 1, "{name}");
        for tenths in 1..=400 {
            let holding = rows
                .iter()
                .filter(|row| row.thickness.contains(wall(tenths)));
            assert_eq!(
                holding.count(),
                usize::from(tenths <= up_to),
                "{name}{tenths}"
            );
        }
    }
}

#[test]
fn a_kit_states_a_material_of_its_own() {
    let own = "\n[[material]]\nid = \"sheet 7\"\nname = \"6063-T6 of sheet 7\"\nstandard = \"ADM 2020\"\nyield_strength = \"24 ksi\"\nultimate_strength = \"29 ksi\"\nwelded_yield_strength = \"8 ksi\"\nwelded_ultimate_strength = \"17 ksi\"\nmodulus = \"10000 ksi\"\ndensity = \"0.098 lb/in3\"\nsource = \"sheet 7\"\nconfidence = \"stated\"\n";
    let text = format!("{KIT}{own}")
        .replacen("6063-T6 (ADM)", "Sheet 7", 1)
        .replace(
            "\"6063-T6 (ADM)\"\nwelded = false",
            "\"sheet 7\"\nwelded = true",
        );
    let kit = Kit::from_toml("kit.toml", &text).unwrap();
    assert_eq!(kit.plank.material.citation.confidence, Confidence::Stated);
    assert_eq!(
        kit.plank.material.yield_strength,
        parse_stress("24 ksi").unwrap()
    );
    assert!(!kit.plank.material.at_weld);
    // Where it is welded, the part is of its softened strength.
    let post = kit.posts.intermediate.unwrap();
    assert!(post.material.at_weld);
    assert_eq!(post.material.yield_strength, parse_stress("8 ksi").unwrap());
    assert_eq!(
        post.material.ultimate_strength,
        parse_stress("17 ksi").unwrap()
    );
}

#[test]
fn a_stated_material_is_complete_and_possible() {
    let refusal = |old: &str, new: &str| {
        let own = "\n[[material]]\nid = \"m\"\nname = \"M\"\nstandard = \"ADM 2020\"\nyield_strength = \"24 ksi\"\nultimate_strength = \"29 ksi\"\nmodulus = \"10000 ksi\"\ndensity = \"2700 kg/m3\"\nsource = \"sheet 7\"\nconfidence = \"stated\"\n";
        assert!(own.contains(old), "{old}");
        let text = format!("{KIT}{}", own.replace(old, new));
        Kit::from_toml("kit.toml", &text).unwrap_err().to_string()
    };
    for (old, new, expected) in [
        (
            "id = \"m\"",
            "id = \"6063-t6 (adm)\"",
            "material.id \"6063-t6 (adm)\": another material has that id",
        ),
        (
            "modulus = \"10000 ksi\"\n",
            "",
            "material.modulus: it is missing",
        ),
        (
            "density = \"2700 kg/m3\"\n",
            "",
            "material.density: it is missing",
        ),
        (
            "source = \"sheet 7\"\n",
            "",
            "material.source: it is missing",
        ),
        (
            "\"24 ksi\"",
            "\"24\"",
            "material.yield_strength \"24\": it has no unit",
        ),
        (
            "\"24 ksi\"",
            "\"0 ksi\"",
            "material.yield_strength \"0 ksi\": a strength is more than nothing",
        ),
        (
            "\"29 ksi\"",
            "\"23 ksi\"",
            "material.ultimate_strength \"23 ksi\": it is below yield_strength; accepted: at least yield_strength",
        ),
        (
            "\"ADM 2020\"",
            "\"ADM\"",
            "material.standard \"ADM\": it is not one of the choices; accepted: ADM 2020, EN 1999-1-1, AISC 360, EN 1993-1-1",
        ),
        (
            "modulus",
            "welded_yield_strength = \"8 ksi\"\nmodulus",
            "material.welded_ultimate_strength: it is missing",
        ),
    ] {
        let said = refusal(old, new);
        assert!(said.contains(expected), "{said}");
    }
}
