#![allow(clippy::unwrap_used, clippy::panic)]

use super::elevation;
use crate::quantity::UnitSystem;
use crate::report::drawing::fixture::{FLOODS, SYSTEMS, alder_lock, stated, without_width};
use crate::report::drawing::legible::{assert_legible, texts};

/// The elevation of the only opening of a building with known floods; it can be read in both
/// systems of units.
fn drawn(name: &str, opening: &str) -> String {
    let text = format!("{FLOODS}\n[[opening]]\n{opening}");
    let [us, _] = SYSTEMS.map(|(units, system)| {
        let assessment = stated(&text, units);
        let drawing = elevation("one", &assessment, &assessment.openings[0]).unwrap();
        assert_legible(&format!("{name}, {system}"), &drawing);
        drawing
    });
    us
}

fn says(drawing: &str, text: &str) -> bool {
    let lines: Vec<String> = texts(drawing).into_iter().map(|found| found.text).collect();
    lines.join(" ").contains(text)
}

#[test]
fn every_opening_of_the_demonstration() {
    for (units, system) in SYSTEMS {
        let assessment = alder_lock(units);
        for opening in &assessment.openings {
            let name = opening.opening.id.replace(' ', "_");
            match elevation("one", &assessment, opening) {
                Some(drawing) => {
                    assert_legible(&format!("{name}, {system}"), &drawing);
                    insta::assert_snapshot!(format!("{name}_{system}"), drawing);
                }
                None => assert_eq!(opening.sill, None, "{name}"),
            }
        }
    }
}

#[test]
fn wide_and_low_with_its_head() {
    let drawing = drawn(
        "window",
        "id = \"window\"\nwidth = \"168 in\"\nheight = \"30 in\"\nsill = \"10 ft NAVD88\"",
    );
    assert!(says(&drawing, "opening 168.0 in") && says(&drawing, "opening 2.50 ft"));
    assert!(!says(&drawing, "cut off"));
    insta::assert_snapshot!("wide", drawing);
}

#[test]
fn of_a_very_long_barrier_a_part_is_left_out() {
    let drawing = drawn("dock", "id = \"dock\"\nwidth = \"300 ft\"\nface = \"8 in\"");
    assert!(says(&drawing, "Between the two break lines"));
    // 3 ft of barrier can be seen.
    let (_, plank) = drawing.split_once("class=\"plank\" height=\"").unwrap();
    let height: f64 = plank.split('"').next().unwrap().parse().unwrap();
    assert!(height > 20.0, "{height}");
    insta::assert_snapshot!("long", drawing);
}

#[test]
fn very_high_barrier_before_a_slit() {
    let drawing = drawn(
        "shaft",
        "id = \"shaft\"\nwidth = \"8 in\"\nsill = \"-56 ft NAVD88\"\nreveal = \"6 in\"",
    );
    assert!(says(&drawing, "barrier 67.50 ft"));
    insta::assert_snapshot!("high", drawing);
}

#[test]
fn an_opening_of_a_millimetre() {
    let drawing = drawn(
        "crack",
        "id = \"crack\"\nwidth = \"1 mm\"\nreveal = \"6 in\"",
    );
    assert!(says(&drawing, "no room for planks between the posts"));
}

#[test]
fn levels_far_below_are_named_by_an_arrow() {
    let drawing = drawn(
        "loft",
        "id = \"loft\"\nwidth = \"36 in\"\nheight = \"80 in\"\nsill = \"27 ft NAVD88\"",
    );
    assert!(drawing.contains("class=\"arrow\""));
    assert!(says(&drawing, "16.60 ft below sill"));
    assert!(says(&drawing, "No plank is needed"));
    insta::assert_snapshot!("far", drawing);
}

#[test]
fn without_a_width_there_are_planks_but_no_posts() {
    let text = format!("{FLOODS}[[opening]]\nid = \"gap\"\nwidth = \"1 ft\"");
    let assessment = without_width(&text, UnitSystem::Us);
    let drawing = elevation("one", &assessment, &assessment.openings[0]).unwrap();
    assert_legible("gap", &drawing);
    assert!(says(&drawing, "width of the opening is not stated"));
    assert!(drawing.contains("class=\"plank\"") && !drawing.contains("class=\"post\""));
    insta::assert_snapshot!("no_width", drawing);
}

#[test]
fn undecided_mounts_are_dashed_and_said() {
    let drawing = drawn("door", "id = \"door\"\nwidth = \"36 in\"");
    assert_eq!(drawing.matches("class=\"perhaps\"").count(), 4);
    assert!(says(&drawing, "mount not decided"));
    let drawing = drawn("door", "id = \"door\"\nwidth = \"36 in\"\nface = \"2 in\"");
    assert_eq!(drawing.matches("class=\"perhaps\"").count(), 2);
    let drawing = drawn(
        "door",
        "id = \"door\"\nwidth = \"36 in\"\nface = \"2 in\"\nreveal = \"1 in\"",
    );
    assert!(says(&drawing, "no end post of the kit fits"));
}

#[test]
fn many_short_legs() {
    let legs = "\"30 in\", ".repeat(8);
    let drawing = drawn("steps", &format!("id = \"steps\"\nrun = [{legs}]"));
    assert!(says(&drawing, "around 7 corners"));
    assert_eq!(drawing.matches("class=\"fold\"").count(), 8); // one in the key
}

#[test]
fn a_hostile_name_is_cut_and_harmless() {
    let name = "<script>alert(1)</script>".repeat(8);
    let drawing = drawn("hostile", &format!("id = \"{name}\"\nwidth = \"36 in\""));
    assert!(!drawing.contains("<script"));
    assert!(drawing.contains("&lt;script&gt;"));
}

#[test]
fn what_is_not_known_is_said() {
    for (units, _) in SYSTEMS {
        let assessment = stated("[[opening]]\nid = \"door\"\nwidth = \"36 in\"", units);
        let drawing = elevation("one", &assessment, &assessment.openings[0]).unwrap();
        assert_legible("unknown", &drawing);
        for what in ["The ground", "The flood level", "The design level"] {
            assert!(says(&drawing, &format!("{what} is not known.")), "{what}");
        }
    }
}

#[test]
fn without_a_sill_there_is_no_drawing() {
    let text = "[[opening]]\nid = \"vent\"\nwidth = \"1 ft\"\nsill = \"unknown\"";
    let assessment = stated(text, UnitSystem::Us);
    assert_eq!(elevation("one", &assessment, &assessment.openings[0]), None);
}

/// The demonstration kit has planks of 6 in: so many of them, each as high as the next, and as
/// high in the drawing as the scale bar says.
#[test]
fn planks_are_to_scale() {
    let drawing = drawn(
        "door",
        "id = \"door\"\nwidth = \"36 in\"\nreveal = \"6 in\"",
    );
    let attribute = |class: &str, name: &str| -> f64 {
        let tags = drawing.split('<');
        let tag = tags
            .into_iter()
            .find(|tag| tag.contains(&format!("class=\"{class}\"")));
        let (_, after) = tag.unwrap().split_once(&format!("{name}=\"")).unwrap();
        after.split('"').next().unwrap().parse().unwrap()
    };
    let a_foot = attribute("plank", "width") / (32.0 / 12.0);
    assert!((attribute("plank", "height") / a_foot - 2.5).abs() < 0.01);
    assert!((attribute("post", "width") / a_foot - 2.0 / 12.0).abs() < 0.01);
    assert!((attribute("gap", "width") / a_foot - 3.0).abs() < 0.01);
    assert!(says(&drawing, "to scale: 1 ft"));
    let half = attribute("mark", "width"); // the dark half of the scale bar
    assert!((2.0 * half / a_foot - 1.0).abs() < 0.01);
}
