#![allow(clippy::unwrap_used)]

use super::{notes, plan};
use crate::quantity::UnitSystem;
use crate::report::drawing::around::{Case, alder_lock, bare, between_sections, crowded};
use crate::report::drawing::fixture::SYSTEMS;
use crate::report::drawing::legible::{assert_legible, texts};

fn drawn(case: &Case) -> String {
    plan("one", &case.assessment, &case.surroundings)
}

/// The drawing without the picture of the ground, whose bytes say nothing to a reader.
fn without_picture(drawing: &str) -> String {
    match drawing.split_once("href=\"data:") {
        None => drawing.to_owned(),
        Some((before, after)) => {
            let (_, after) = after.split_once('"').unwrap();
            format!("{before}href=\"data:…\"{after}")
        }
    }
}

fn told(case: &Case) -> String {
    notes(&case.assessment, &case.surroundings).join("\n")
}

#[test]
fn the_demonstration() {
    for (units, system) in SYSTEMS {
        let case = alder_lock(units, "");
        let drawing = drawn(&case);
        assert_legible(system, &drawing);
        assert_eq!(drawing.matches("data:image/png;base64,").count(), 1);
        insta::assert_snapshot!(
            format!("alder_lock_{system}"),
            format!("{}\n\n{}", without_picture(&drawing), told(&case))
        );
    }
}

#[test]
fn lines_with_their_levels_and_those_that_lie_outside() {
    for (units, system) in SYSTEMS {
        let case = between_sections(units);
        let drawing = drawn(&case);
        assert_legible(system, &drawing);
        insta::assert_snapshot!(
            format!("between_sections_{system}"),
            format!("{}\n\n{}", without_picture(&drawing), told(&case))
        );
    }
}

#[test]
fn without_any_map_the_plan_says_so() {
    let case = bare(UnitSystem::Us);
    let drawing = drawn(&case);
    assert_legible("bare", &drawing);
    assert!(!drawing.contains("<script") && !drawing.contains("<image"));
    let words: Vec<String> = texts(&drawing).into_iter().map(|text| text.text).collect();
    for missing in ["no zones here", "no terrain here"] {
        assert!(words.iter().any(|text| text == missing), "{words:?}");
    }
    assert_eq!(
        told(&case),
        "Terrain: none was given.\nZones: none were given."
    );
}

#[test]
fn many_openings_with_long_names_stay_apart() {
    for (units, system) in SYSTEMS {
        let case = crowded(units);
        let drawing = drawn(&case);
        assert_legible(system, &drawing);
        assert!(!drawing.contains("<b>"));
        // Every opening that stands elsewhere has its number, on the map and in the legend.
        assert_eq!(case.surroundings.openings.len(), 41);
    }
}

#[test]
fn the_same_twice() {
    let case = alder_lock(UnitSystem::Si, "");
    assert_eq!(drawn(&case), drawn(&alder_lock(UnitSystem::Si, "")));
}
