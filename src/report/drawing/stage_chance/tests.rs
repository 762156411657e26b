#![allow(clippy::unwrap_used)]

use std::fmt::Write as _;

use super::stage_chance;
use crate::quantity::UnitSystem;
use crate::report::drawing::fixture::{FLOODS, SYSTEMS, stated};
use crate::report::drawing::legible::{assert_legible, texts};

const OPENINGS: &str = r#"
[[opening]]
id = "front door"
width = "36 in"
reveal = "6 in"
[[opening]]
id = "garage"
width = "9 ft"
sill = "8.7 ft NAVD88"
[[opening]]
id = "garden door"
width = "32 in"
sill = "9 ft NAVD88"
[[opening]]
id = "window"
width = "32 in"
sill = "25 ft NAVD88"
"#;

fn said(drawing: &str) -> Vec<String> {
    texts(drawing).into_iter().map(|found| found.text).collect()
}

#[test]
fn sills_and_tops_beside_the_curve() {
    for (units, system) in SYSTEMS {
        let assessment = stated(&format!("{FLOODS}{OPENINGS}"), units);
        let drawing = stage_chance("one", &assessment, None).unwrap();
        assert_legible(system, &drawing);
        let said = said(&drawing);
        // Sills that lie level have one label; what lies outside the floods has no number.
        for label in [
            "sill: front door, garden",
            "more frequent than 10 %",
            "rarer than 0.2 %",
        ] {
            assert!(
                said.iter().any(|text| text.starts_with(label)),
                "{label} in {said:?}"
            );
        }
        assert_eq!(drawing.matches("class=\"flood\"").count(), 3);
        insta::assert_snapshot!(format!("curve_{system}"), drawing);
    }
}

#[test]
fn the_curve_ends_at_the_outermost_floods() {
    let assessment = stated(&format!("{FLOODS}{OPENINGS}"), UnitSystem::Us);
    let drawing = stage_chance("one", &assessment, None).unwrap();
    let (_, path) = drawing.split_once("class=\"curve\" d=\"M").unwrap();
    let path = path.split('"').next().unwrap();
    assert_eq!(path.split('L').count(), 3);
    let said = said(&drawing);
    assert!(said.contains(&"10 %".to_owned()) && said.contains(&"0.2 %".to_owned()));
    assert!(!said.contains(&"20 %".to_owned()) && !said.contains(&"0.1 %".to_owned()));
    // 1 − 0.9³⁰ = 0.9576 and 1 − 0.99³⁰ = 0.2603.
    assert!(said.contains(&"95.8 %".to_owned()) && said.contains(&"26.0 %".to_owned()));
}

#[test]
fn forty_openings_with_long_names_can_be_read() {
    let mut text = FLOODS.to_owned();
    for number in 0..40 {
        let name = "<b>A door with a name that nobody can remember</b>".repeat(4);
        write!(
            text,
            "[[opening]]\nid = \"{number} {name}\"\nwidth = \"3 ft\"\nsill = \"{} ft NAVD88\"\n",
            8.6 + 0.05 * f64::from(number)
        )
        .unwrap();
    }
    for (units, system) in SYSTEMS {
        let assessment = stated(&text, units);
        let drawing = stage_chance("one", &assessment, None).unwrap();
        assert_legible(system, &drawing);
        assert!(!drawing.contains("<b>"));
        assert!(
            said(&drawing)
                .iter()
                .any(|text| text.contains("without a label"))
        );
    }
}

#[test]
fn one_known_flood_makes_no_curve() {
    let text = "[[flood_level]]\nevent = \"1%\"\nlevel = \"10 ft NAVD88\"\nsource = \"study\"\n[[opening]]\nid = \"door\"\nwidth = \"3 ft\"";
    let assessment = stated(text, UnitSystem::Us);
    assert_eq!(stage_chance("one", &assessment, None), None);
    assert_eq!(
        stage_chance("one", &assessment, Some(&assessment.openings[0])),
        None
    );
}
