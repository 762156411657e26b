#![allow(clippy::unwrap_used)]

use super::{notes, plan};
use crate::quantity::UnitSystem;
use crate::report::drawing::around::{
    Case, alder_lock, alder_lock_maps, bare, between_sections, case, crowded, zones,
};
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
    for missing in ["no zones were given", "no terrain was given"] {
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

#[test]
fn a_zone_is_told_of_the_file_that_it_comes_from() {
    let text = std::fs::read_to_string("examples/alder-lock/zones.geojson").unwrap();
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("elsewhere.geojson");
    std::fs::write(&path, text.replace(" 5294", " 5394")).unwrap();
    let mut maps = alder_lock_maps();
    maps.zones.insert(0, zones(&path));
    let site = std::fs::read_to_string("examples/alder-lock/site.toml").unwrap();
    let told = told(&case(&site, maps, UnitSystem::Us));
    let line = |file: &str| told.lines().find(|line| line.contains(file)).unwrap();
    assert!(
        !line("elsewhere.geojson").contains("at the building"),
        "{told}"
    );
    assert!(
        line("zones.geojson, layer").contains("at the building: AE"),
        "{told}"
    );
}

#[test]
fn the_words_name_the_zone_of_the_site_not_of_an_opening() {
    let text = "name = \"Gatehouse\"\nthreshold = \"620.6 ft NAVD88\"\n\
        location = { longitude = -87.497720, latitude = 47.799358 }\n\
        [[opening]]\nid = \"door\"\nwidth = \"36 in\"\n\
        location = { longitude = -87.498762, latitude = 47.799353 }\n";
    let drawing = drawn(&case(text, alder_lock_maps(), UnitSystem::Us));
    assert!(
        drawing.contains("The site lies in zone D, not known."),
        "{drawing}"
    );
}
