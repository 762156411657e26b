//! Kits, anchors and people that fall short of what a barrier asks for.

use super::barrier_verdicts::is_for_an_engineer;
use super::figures::lines;
use super::scratch::{Scratch, demonstration_kit, without_tables};

const DOOR: [&str; 6] = ["--width", "36 in", "--reveal", "6 in", "--depth", "2 ft"];
const GATE: [&str; 6] = ["--width", "14 ft", "--reveal", "6 in", "--depth", "2 ft"];

#[test]
fn the_kit_lacks_a_part() {
    let scratch = Scratch::new();
    let kit =
        |tables: &[&str]| scratch.write("kit.toml", without_tables(&demonstration_kit(), tables));
    let lacks = |options: &[&str], part: &str| {
        let result = scratch.barrier_json(&[options, &["--kit", "kit.toml"]].concat());
        let reasons = lines(&result, "/reasons");
        assert_eq!(result["verdict"], "engineer", "{reasons}");
        assert!(
            reasons
                .lines()
                .any(|line| line.contains("kit") && line.contains(part)),
            "{reasons}"
        );
    };
    kit(&["intermediate_post"]);
    lacks(&GATE, "intermediate post");
    kit(&["corner_post"]);
    lacks(&["--run", "4 ft, 6 ft", "--depth", "2 ft"], "corner post");
    kit(&["brace"]);
    lacks(&[&GATE[..], &["--waves", "breaking"]].concat(), "brace");
    kit(&["inside_post"]);
    lacks(&["--run", "4 ft, 6 ft", "--depth", "2 ft"], "inside post");
}

/// Without a post between them planks of 14 ft bend too far, and under more water they break.
#[test]
fn planks_that_fail() {
    let scratch = Scratch::new();
    scratch.write(
        "kit.toml",
        without_tables(&demonstration_kit(), &["intermediate_post"]),
    );
    let reasons = |width| {
        let options = [
            "--width", width, "--reveal", "6 in", "--depth", "3 ft", "--kit", "kit.toml",
        ];
        let result = scratch.barrier_json(&options);
        assert_eq!(result["verdict"], "engineer");
        lines(&result, "/reasons")
    };
    let bent = reasons("12 ft");
    assert!(bent.contains("plank 1: deflection of"), "{bent}");
    let broken = reasons("19 ft");
    assert!(broken.contains("plank 1: bending of"), "{broken}");
    let long = reasons("25 ft");
    assert!(
        long.contains("of 299.0 in is longer than the kit's longest, 240.0 in"),
        "{long}"
    );
}

/// The concrete of a floor, with anchors so far from the edge at the dry side.
fn floor(edge: &str) -> String {
    format!(
        "[floor]\nmaterial = \"concrete\"\nanchors = \"headed stud\"\nhead_bearing = \"0.8 in2\"\n\
         embedment = \"4 in\"\nbedding = \"direct\"\nsteel_area = \"0.334 in2\"\n\
         steel_ultimate = \"65 ksi\"\nsteel_yield = \"51 ksi\"\nsteel = \"ductile\"\n\
         strength = \"2500 psi\"\nthickness = \"12 in\"\ncracking = \"cracked\"\n\
         edge_dry = \"{edge}\"\nedge_water = \"far\"\nedge_left = \"far\"\nedge_right = \"far\"\n"
    )
}

#[test]
fn anchors_that_fail() {
    let scratch = Scratch::new();
    let options = [
        "--width",
        "14 ft",
        "--reveal",
        "6 in",
        "--depth",
        "3 ft",
        "--brace",
        "dry side",
        "--conditions",
        "floor.toml",
    ];
    scratch.write("floor.toml", floor("20 in"));
    assert_eq!(scratch.barrier_json(&options)["verdict"], "protect");
    scratch.write("floor.toml", floor("2 in"));
    let words = ["anchors of the intermediate post: they would carry"];
    let result = is_for_an_engineer(&scratch, &options, &words);
    let check = &result["barrier"]["anchors"][0]["check"];
    assert_eq!(check["outcome"], "fails");
    assert!(check["utilisation"].as_f64() > Some(1.0));
}

#[test]
fn not_enough_warning() {
    let scratch = Scratch::new();
    let write = |minutes| {
        let people = "[fitting]\ntime_a_plank = \"10 min\"\n[water]\n";
        scratch.write(
            "people.toml",
            format!("{people}warning = \"{minutes} min\"\n"),
        );
    };
    let options = [&DOOR[..], &["--conditions", "people.toml"]].concat();
    write(41);
    assert_eq!(scratch.barrier_json(&options)["verdict"], "protect");
    write(39);
    is_for_an_engineer(&scratch, &options, &["warning"]);
}
