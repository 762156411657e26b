//! What makes a barrier alone one for an engineer, with the words that say why.

use serde_json::Value;

use super::figures::lines;
use super::scratch::Scratch;

const DOOR: [&str; 6] = ["--width", "36 in", "--reveal", "6 in", "--depth", "2 ft"];
const GATE: [&str; 6] = ["--width", "14 ft", "--reveal", "6 in", "--depth", "2 ft"];

/// Holds verdict and reasons of options on a folder: a word for each reason beside that the
/// sill lies below the level.
pub(crate) fn is_for_an_engineer(scratch: &Scratch, options: &[&str], words: &[&str]) -> Value {
    let result = scratch.barrier_json(options);
    let reasons = lines(&result, "/reasons");
    assert_eq!(result["verdict"], "engineer", "{reasons}");
    for word in words {
        assert!(reasons.contains(word), "{word:?} is not in: {reasons}");
    }
    assert_eq!(reasons.lines().count(), words.len() + 1, "{reasons}");
    result
}

fn door(more: &[&str], words: &[&str]) -> Value {
    is_for_an_engineer(&Scratch::new(), &[&DOOR[..], more].concat(), words)
}

#[test]
fn an_ordinary_door_and_gate_are_not() {
    for options in [DOOR, GATE] {
        let result = Scratch::new().barrier_json(&options);
        let reasons = lines(&result, "/reasons");
        assert_eq!(result["verdict"], "protect", "{reasons}");
        assert_eq!(reasons.lines().count(), 1, "{reasons}");
        assert_eq!(lines(&result, "/barrier/shortfalls"), "");
    }
}

#[test]
fn higher_than_the_kit() {
    // 9 planks of 6 in, over the 4 ft of the kit's maker.
    let result = door(
        &["--height", "4.5 ft"],
        &["4.50 ft is higher than the 4.00 ft", "the wall"],
    );
    assert!(lines(&result, "/barrier/shortfalls").contains("kit's maker"));
}

#[test]
fn higher_than_the_opening() {
    door(
        &["--opening-height", "1.5 ft"],
        &["2.00 ft is higher than the opening"],
    );
}

#[test]
fn more_water_than_the_wall_takes() {
    // Ordinary masonry 3 ft, an unsupported panel 2 ft (data/limits.toml).
    let deep = ["--width", "36 in", "--reveal", "6 in", "--depth"];
    let scratch = Scratch::new();
    let with = |depth, wall| scratch.barrier_json(&[&deep[..], &[depth, "--wall", wall]].concat());
    assert_eq!(with("3 ft", "unreinforced masonry")["verdict"], "protect");
    assert_eq!(with("2 ft", "unsupported panel")["verdict"], "protect");
    assert_eq!(
        with("3.01 ft", "unreinforced masonry")["verdict"],
        "engineer"
    );
    assert_eq!(with("2.01 ft", "unsupported panel")["verdict"], "engineer");
    door(&["--wall", "frame"], &["frame"]);
    let options = [&deep[..], &["3.25 ft", "--height", "3.5 ft"]].concat();
    is_for_an_engineer(&scratch, &options, &["3.50 ft of water above the sill"]);
}

/// The wall below the sill stands in the water too.
#[test]
fn more_water_over_the_ground_than_the_wall_takes() {
    let scratch = Scratch::new();
    let at = |above| scratch.barrier_json(&[&DOOR[..], &["--sill-above-ground", above]].concat());
    assert_eq!(at("1 ft")["verdict"], "protect");
    assert_eq!(at("1.1 ft")["verdict"], "engineer");
    door(
        &["--sill-above-ground", "1.5 ft"],
        &["3.50 ft of water above the lowest adjacent grade"],
    );
}

#[test]
fn a_sill_below_the_ground() {
    door(
        &["--sill-above-ground", "-1 ft"],
        &["below the lowest ground"],
    );
}

#[test]
fn waves() {
    door(
        &["--waves", "non-breaking"],
        &["waves are stated", "waves that do not break"],
    );
    let result = door(&["--waves", "breaking"], &["waves are stated"]);
    // What their load lacks is said once, and not that nothing is stated.
    let open = lines(&result, "/barrier/open");
    let of_waves: Vec<_> = open
        .lines()
        .filter(|line| line.contains("breaking waves"))
        .collect();
    assert_eq!(of_waves.len(), 1, "{open}");
    assert!(
        of_waves[0].contains("risk_category") && of_waves[0].contains("ground"),
        "{open}"
    );
    let scratch = Scratch::new();
    scratch.write("coast.toml", "[loads]\nrisk_category = \"II\"\n");
    let stated = [
        "--waves",
        "breaking",
        "--conditions",
        "coast.toml",
        "--sill-above-ground",
        "0 ft",
    ];
    let options = [&DOOR[..], &stated].concat();
    is_for_an_engineer(&scratch, &options, &["waves are stated", "crests"]);
}

/// Where waves act a post is braced, even where their load is not known.
#[test]
fn waves_brace_a_post() {
    let braced = |more: &[&str]| {
        let result = Scratch::new().barrier_json(&[&GATE[..], more].concat());
        !result["barrier"]["posts"][0]["brace"].is_null()
    };
    assert!(!braced(&[]));
    assert!(braced(&["--waves", "breaking"]));
    assert!(braced(&["--waves", "non-breaking"]));
}

#[test]
fn fast_water() {
    assert_eq!(
        Scratch::new().barrier_json(&[&DOOR[..], &["--velocity", "5 ft/s"]].concat())["verdict"],
        "protect"
    );
    door(
        &["--velocity", "5.1 ft/s"],
        &["faster than the 5.0 ft/s limit"],
    );
    // Its drag is in the load only with the width of the wall.
    door(
        &["--velocity", "12 ft/s"],
        &["limit", "the width of the wall is not stated"],
    );
}

#[test]
fn no_post_fits() {
    let small = [
        "--width", "36 in", "--depth", "2 ft", "--reveal", "1 in", "--face", "1 in",
    ];
    let result = is_for_an_engineer(&Scratch::new(), &small, &["no end post of the kit fits"]);
    assert!(result["barrier"]["mount"].is_null());
    let narrow = ["--width", "4 in", "--depth", "2 ft", "--reveal", "6 in"];
    is_for_an_engineer(&Scratch::new(), &narrow, &["no clear width"]);
}

#[test]
fn overtopped() {
    let result = door(
        &["--height", "1 ft"],
        &["2.00 ft of water stands above a barrier of 1.00 ft"],
    );
    let flows = result["barrier"]["inflow"]["parts"].as_array().unwrap();
    assert!(
        flows.iter().any(|part| part["way"] == "overtopping"),
        "{flows:?}"
    );
}
