//! Barriers as large as the options take, and buildings of many openings: they take their
//! time in hundredths of a second. The bounds are wide, for slow machines.

use std::fmt::Write as _;
use std::time::{Duration, Instant};

use super::scratch::Scratch;

/// A run that took a minute once, since each post was found one after the other.
const LONGEST: Duration = Duration::from_secs(5);

fn in_time<Found>(work: impl FnOnce() -> Found) -> Found {
    let started = Instant::now();
    let found = work();
    let took = started.elapsed();
    assert!(took < LONGEST, "{took:?}");
    found
}

/// Waves, debris and fast water.
const HARD: &str = "[loads]\ndebris = \"special\"\nrisk_category = \"IV\"\n\
                    [water]\nwaves = \"breaking\"\nvelocity = \"9 ft/s\"\n";

#[test]
fn an_opening_of_a_hundred_metres() {
    let scratch = Scratch::new();
    scratch.write("hard.toml", HARD);
    for depth in ["3 ft", "30 m"] {
        for more in [
            &[][..],
            &["--conditions", "hard.toml", "--sill-above-ground", "0 ft"],
        ] {
            let options = ["--width", "100 m", "--reveal", "6 in", "--depth", depth];
            let result = in_time(|| scratch.barrier_json(&[&options[..], more].concat()));
            assert!(
                result["barrier"]["spans"].as_u64() > Some(16),
                "{}",
                result["barrier"]["spans"]
            );
        }
    }
}

#[test]
fn a_run_of_thirty_legs() {
    let scratch = Scratch::new();
    scratch.write("hard.toml", HARD);
    let legs = vec!["100 m"; 30].join(", ");
    for depth in ["2 ft", "4 ft", "30 m"] {
        let result = in_time(|| {
            scratch.barrier_json(&[
                "--run",
                &legs,
                "--depth",
                depth,
                "--conditions",
                "hard.toml",
                "--sill-above-ground",
                "0 ft",
            ])
        });
        assert_eq!(result["barrier"]["corner_posts"], 29);
        assert_eq!(result["barrier"]["legs"].as_array().unwrap().len(), 30);
    }
}

#[test]
fn a_building_of_forty_openings() {
    let scratch = Scratch::new();
    let mut text = format!(
        "name = \"Works\"\nlocation = {{ longitude = -74.0, latitude = 40.0 }}\n\
         threshold = \"10 ft NAVD88\"\nlowest_adjacent_grade = \"10 ft NAVD88\"\n\
         [[flood_level]]\nevent = \"1%\"\nlevel = \"13.5 ft NAVD88\"\nsource = \"study\"\n{HARD}"
    );
    for number in 0..40_u32 {
        write!(text, "[[opening]]\nid = \"{number}\"\n").unwrap();
        match number % 3 {
            0 => writeln!(text, "run = [\"{} ft\", \"30 m\", \"4 ft\"]", 3 + number),
            1 => writeln!(text, "width = \"{} m\"", 2 * number + 1),
            _ => writeln!(text, "width = \"{} in\"", 24 + number),
        }
        .unwrap();
    }
    scratch.write("works.toml", text);
    let result = in_time(|| scratch.json(&["site", "works.toml"]));
    assert_eq!(result["openings"].as_array().unwrap().len(), 40);
    // All seals together (no rain is stated) are those of each.
    let each = result["openings"].as_array().unwrap().iter();
    let sum: f64 = each
        .map(|opening| {
            opening["barrier"]["inflow"]["total_m3_per_s"]
                .as_f64()
                .unwrap()
        })
        .sum();
    let whole = result["behind"]["inflow"]["total_m3_per_s"]
        .as_f64()
        .unwrap();
    assert!((sum - whole).abs() < 1e-7, "{sum} {whole}");
}

/// Too narrow for its posts, down to what no eye sees: an answer, and no barrier.
#[test]
fn an_opening_of_nearly_nothing() {
    for width in ["0.001 mm", "1 mm", "2 in", "4 in"] {
        let options = ["--width", width, "--reveal", "6 in", "--depth", "2 ft"];
        let result = Scratch::new().barrier_json(&options);
        assert_eq!(result["verdict"], "engineer");
        assert_eq!(result["barrier"]["planks"]["in_all"], 0);
        assert!(result["barrier"]["end_post"].is_null());
    }
    let low = ["--width", "36 in", "--depth", "1 mm"];
    assert_eq!(
        Scratch::new().barrier_json(&low)["barrier"]["planks"]["count"],
        1
    );
}
