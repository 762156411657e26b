#![allow(clippy::unwrap_used)]

use super::section;
use crate::quantity::UnitSystem;
use crate::report::drawing::around::{Case, alder_lock, bare, between_sections, crowded};
use crate::report::drawing::fixture::SYSTEMS;
use crate::report::drawing::legible::{assert_legible, texts};

fn drawn(case: &Case) -> Option<String> {
    section("one", &case.assessment, &case.surroundings)
}

fn words(drawing: &str) -> Vec<String> {
    texts(drawing).into_iter().map(|text| text.text).collect()
}

#[test]
fn the_demonstration() {
    for (units, system) in SYSTEMS {
        let drawing = drawn(&alder_lock(units, "")).unwrap();
        assert_legible(system, &drawing);
        insta::assert_snapshot!(format!("alder_lock_{system}"), drawing);
    }
}

#[test]
fn the_datum_stands_on_the_axis() {
    for (units, axis) in [(UnitSystem::Us, "ft NAVD88"), (UnitSystem::Si, "m NAVD88")] {
        let drawing = drawn(&alder_lock(units, "")).unwrap();
        assert!(words(&drawing).iter().any(|text| text == axis));
    }
}

#[test]
fn low_ground_outside_every_flooded_zone_is_not_drawn_as_water() {
    let drawing = drawn(&between_sections(UnitSystem::Us)).unwrap();
    assert_legible("between sections", &drawing);
    assert!(!drawing.contains("class=\"water\""));
    let words = words(&drawing);
    assert!(
        words
            .iter()
            .any(|text| text == "below the flood level, zones not given")
    );
}

#[test]
fn of_too_many_sills_the_highest_are_told_together() {
    for (units, system) in SYSTEMS {
        let drawing = drawn(&crowded(units)).unwrap();
        assert_legible(system, &drawing);
        assert!(!drawing.contains("<b>"));
        let words = words(&drawing);
        let more = words.iter().filter(|text| text.contains(" more, to "));
        assert_eq!(more.count(), 1, "{words:?}");
        // A mark for each height all the same: 610 to 619.75 by quarters, and those of the
        // demonstration that are none of these.
        assert!(drawing.matches("class=\"sill-mark\"").count() >= 40);
    }
}

#[test]
fn without_ground_there_is_none() {
    assert_eq!(drawn(&bare(UnitSystem::Us)), None);
}
