//! `site` and `barrier` take the same steps: the same opening before the same water is the
//! same barrier.

use serde_json::Value;

use super::figures::differences;
use super::scratch::Scratch;

/// Everything that a conditions file may state.
const CONDITIONS: &str = r#"
[water]
salinity = "salt"
velocity = "3 ft/s"
waves = "none"
warning = "1 h"
[loads]
risk_category = "III"
debris = "special"
extra_depth = "6 in"
deflection = "L/150"
combination = "asce7-16-flood"
[floor]
material = "concrete"
anchors = "headed stud"
head_bearing = "0.8 in2"
embedment = "6 in"
bedding = "direct"
steel_area = "0.334 in2"
steel_ultimate = "65 ksi"
steel_yield = "51 ksi"
steel = "ductile"
strength = "4000 psi"
thickness = "12 in"
cracking = "cracked"
edge_dry = "far"
edge_water = "12 in"
edge_left = "far"
edge_right = "far"
[jamb]
material = "masonry"
[inside]
floor_area = "600 ft2"
greatest_depth = "2 in"
rain = "1 in/h"
pump_margin = 1.5
[fitting]
time_a_plank = "2 min"
time_a_post = "10 min"
parties = 2
lift = "50 lb"
"#;

/// One opening in both forms: the lines of the site file, and the options.
struct Case<'a> {
    /// Water over the sill, in feet.
    depth: f64,
    /// Lines of `[[opening]]`.
    opening: &'a str,
    /// The same as options.
    options: &'a [&'a str],
    /// Lines of the site.
    site: &'a str,
    conditions: &'a str,
}

/// The opening by `site`, with its threshold at 10 ft and a level that a study states.
fn by_site(scratch: &Scratch, case: &Case<'_>) -> Value {
    let level = 10.0 + case.depth;
    let text = format!(
        "name = \"House\"\nlocation = {{ longitude = -74.0, latitude = 40.0 }}\n\
         threshold = \"10 ft NAVD88\"\n{}\n[[flood_level]]\nevent = \"1%\"\n\
         level = \"{level} ft NAVD88\"\nsource = \"study\"\n{}\n[[opening]]\nid = \"it\"\n{}\n",
        case.site, case.conditions, case.opening,
    );
    scratch.write("one.toml", text);
    scratch.json(&["site", "one.toml"])
}

fn by_barrier(scratch: &Scratch, case: &Case<'_>) -> Value {
    scratch.write("yard.toml", case.conditions);
    let depth = format!("{} ft", case.depth);
    let options = ["--depth", &depth, "--conditions", "yard.toml"];
    scratch.barrier_json(&[&options[..], case.options].concat())
}

/// The barrier, what stands behind it and the verdict are the same, to a millionth.
fn agree(case: &Case<'_>) -> Value {
    let scratch = Scratch::new();
    let (site, barrier) = (by_site(&scratch, case), by_barrier(&scratch, case));
    let opening = &site["openings"][0];
    let mut found = differences(&opening["barrier"], &barrier["barrier"], "barrier");
    found.extend(differences(&site["behind"], &barrier["behind"], "behind"));
    found.extend(differences(
        &site["verdict"],
        &barrier["verdict"],
        "verdict",
    ));
    for way in ["shortfalls", "open"] {
        let both = (&opening["barrier"][way], &barrier["barrier"][way]);
        assert_eq!(both.0, both.1);
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert!(barrier["barrier"]["barrier_height_m"].as_f64() > Some(0.0));
    barrier
}

const PLAIN: Case<'_> = Case {
    depth: 2.0,
    opening: "width = \"36 in\"",
    options: &["--width", "36 in"],
    site: "",
    conditions: "",
};

#[test]
fn an_opening_of_which_only_the_width_is_known() {
    agree(&PLAIN);
}

#[test]
fn every_measure_of_an_opening() {
    agree(&Case {
        opening: "width = \"36 in\"\nheight = \"7 ft\"\nreveal = \"2 in\"\nface = \"8 in\"\nmount = \"outside\"\nwall = \"brick veneer\"",
        options: &[
            "--width",
            "36 in",
            "--opening-height",
            "7 ft",
            "--reveal",
            "2 in",
            "--face",
            "8 in",
            "--mount",
            "outside",
            "--wall",
            "brick veneer",
        ],
        ..PLAIN
    });
}

#[test]
fn every_condition() {
    for (depth, brace) in [(2.5, "dry side"), (2.5, "water side"), (3.75, "dry side")] {
        let result = agree(&Case {
            depth,
            opening: &format!("width = \"14 ft\"\nreveal = \"6 in\"\nbrace = \"{brace}\""),
            options: &["--width", "14 ft", "--reveal", "6 in", "--brace", brace],
            conditions: CONDITIONS,
            ..PLAIN
        });
        assert_eq!(result["combination"], "asce7-16-flood");
        assert!(!result["barrier"]["anchors"][0]["check"].is_null());
    }
}

#[test]
fn a_run() {
    agree(&Case {
        opening: "run = [\"4 ft\", \"13 ft\", \"4 ft\"]",
        options: &["--run", "4 ft, 13 ft, 4 ft"],
        conditions: CONDITIONS,
        ..PLAIN
    });
}

/// Where the ground is surveyed the site knows it, and the options state it.
#[test]
fn ground_below_and_above_the_sill() {
    for (grade, above) in [("9.5 ft", "6 in"), ("11 ft", "-1 ft"), ("8 ft", "2 ft")] {
        agree(&Case {
            opening: "width = \"36 in\"\nreveal = \"6 in\"\nsoil = \"soft clay\"",
            options: &[
                "--width",
                "36 in",
                "--reveal",
                "6 in",
                "--soil",
                "soft clay",
                "--sill-above-ground",
                above,
            ],
            site: &format!("lowest_adjacent_grade = \"{grade} NAVD88\""),
            ..PLAIN
        });
    }
}

#[test]
fn breaking_waves_with_and_without_what_they_depend_on() {
    let conditions = "[water]\nwaves = \"breaking\"\n[loads]\nrisk_category = \"II\"\n";
    let opening = "width = \"36 in\"\nreveal = \"6 in\"";
    let door = ["--width", "36 in", "--reveal", "6 in"];
    agree(&Case {
        opening,
        options: &door,
        conditions,
        ..PLAIN
    });
    let stated = [&door[..], &["--sill-above-ground", "6 in"]].concat();
    agree(&Case {
        opening,
        options: &stated,
        site: "lowest_adjacent_grade = \"9.5 ft NAVD88\"",
        conditions,
        ..PLAIN
    });
}

/// Limits of walls, speeds and warnings, passed and just not.
#[test]
fn verdicts_at_their_limits() {
    for depth in [1.0, 2.0, 2.000_01, 3.0, 3.000_01, 4.0, 4.000_01] {
        for wall in ["unsupported panel", "reinforced concrete", "frame"] {
            agree(&Case {
                depth,
                opening: &format!("width = \"36 in\"\nwall = \"{wall}\""),
                options: &["--width", "36 in", "--wall", wall],
                ..PLAIN
            });
        }
    }
    for conditions in [
        "[water]\nvelocity = \"5 ft/s\"\n",
        "[water]\nvelocity = \"5.01 ft/s\"\n",
        "[water]\nvelocity = \"12 ft/s\"\n",
        "[water]\nvelocity = \"12 ft/s\"\nwall_width = \"30 ft\"\n",
        "[water]\nwaves = \"non-breaking\"\n",
        "[water]\nwarning = \"8 min\"\n[fitting]\ntime_a_plank = \"2 min\"\n",
        "[water]\nwarning = \"7 min\"\n[fitting]\ntime_a_plank = \"2 min\"\n",
    ] {
        agree(&Case {
            conditions,
            ..PLAIN
        });
    }
}
