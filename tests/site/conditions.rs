//! Conditions: what is absent, and what is refused of loads, rooms, people and openings.

use sillmark::anchor::{AnchorSystem, CastInShape, Fixing};
use sillmark::site::{CombinationChoice, Conditions, Site};
use sillmark::statement::Choice;

fn read(text: &str) -> Result<Conditions, String> {
    Conditions::from_toml("yard.toml", text).map_err(|error| error.to_string())
}

/// Each line, written below its table, gives this message.
pub(super) fn refused(table: &str, cases: &[(&str, &str)]) {
    for (lines, expected) in cases {
        let error = read(&format!("[{table}]\n{lines}\n")).unwrap_err();
        assert_eq!(error, format!("yard.toml, {expected}"), "{lines}");
    }
}

#[test]
fn nothing_stated_is_nothing_known() {
    assert_eq!(read("").unwrap(), Conditions::default());
    let empty = read("[water]\n[loads]\n[inside]\n[fitting]\n").unwrap();
    assert_eq!(empty, Conditions::default());
    assert_eq!(Conditions::default().floor, None);
}

#[test]
fn a_file_of_conditions_has_nothing_of_a_building() {
    assert_eq!(
        read("name = \"Lock\"\n").unwrap_err(),
        "yard.toml, line 1: name: there is no such field here; accepted: water, loads, floor, jamb, inside, fitting"
    );
    assert_eq!(
        read("\nloads = \"heavy\"\n").unwrap_err(),
        "yard.toml, line 2: loads \"\\\"heavy\\\"\": it is not a table; accepted: [loads] and its fields below it"
    );
}

#[test]
fn a_combination_by_its_id_keeps_its_place() {
    let loads = read("[loads]\ncombination = \" us-full-water \"\n")
        .unwrap()
        .loads;
    let Some(CombinationChoice::Named { id, place }) = loads.combination else {
        panic!("{:?}", loads.combination);
    };
    assert_eq!(id, "us-full-water");
    assert_eq!(place.to_string(), "yard.toml, line 2");
}

#[test]
fn every_kind_of_anchor_can_be_named() {
    let fixing = |word: &str| {
        let text = format!("[jamb]\nanchors = \"{word}\"\n");
        read(&text).unwrap().jamb.unwrap().fixing.unwrap()
    };
    for (word, expected) in CastInShape::CHOICES {
        let Fixing::CastIn { shape, .. } = fixing(word) else {
            panic!("{word}");
        };
        assert_eq!(shape, *expected);
    }
    for (word, expected) in AnchorSystem::CHOICES {
        let Fixing::PostInstalled { system, .. } = fixing(word) else {
            panic!("{word}");
        };
        assert_eq!(system, *expected);
    }
    assert!(matches!(
        fixing("Drop-in sleeve"),
        Fixing::DropInSleeve { .. }
    ));
}

#[test]
fn loads_that_cannot_be() {
    refused(
        "loads",
        &[
            ("risk_category = 2", ""),
            ("debris = \"some\"", ""),
            ("extra_depth = 1", ""),
            ("extra_depth = \"12 ft\"", ""),
            ("deflection = \"120\"", ""),
            ("deflection = \"L/5\"", ""),
            ("combination = \"\"", ""),
            ("combination = [1.6]", ""),
            (
                "\n[loads.combination]\nname = \"Town\"\nsource = \"ordinance 7\"",
                "",
            ),
            (
                "\n[loads.combination]\nname = \"Town\"\nsource = \"ordinance 7\"\nstrength = 16",
                "",
            ),
            ("debris_weight = \"1000 lb\"", ""),
        ],
    );
}

#[test]
fn rooms_that_cannot_be() {
    refused(
        "inside",
        &[
            ("floor_area = \"600 ft\"", ""),
            ("floor_area = \"0 ft2\"", ""),
            ("greatest_depth = \"0 in\"", ""),
            ("greatest_depth = \"100 ft\"", ""),
            ("rain = \"2 in\"", ""),
            ("rain = \"200 in/h\"", ""),
            ("rain_area = \"-5 m2\"", ""),
            ("runoff = \"1.2\"", ""),
            ("pump_margin = 0.9", ""),
            ("pump_margin = nan", ""),
            ("pump_margin = \"150 %\"", ""),
            ("depth = \"4 in\"", ""),
        ],
    );
}

#[test]
fn people_who_cannot_be() {
    refused(
        "fitting",
        &[
            ("time_a_plank = 2", ""),
            ("time_a_plank = \"0 min\"", ""),
            ("time_a_post = \"2 days\"", ""),
            ("parties = 0", ""),
            ("parties = 1.5", ""),
            ("lift = \"50 N\"", ""),
            ("lift = \"500 lb\"", ""),
            ("minutes_per_plank = 2", ""),
        ],
    );
}

#[test]
fn openings_that_cannot_be() {
    for (lines, expected) in [
        ("soil = \"mud\"", ""),
        ("gap = \"0.1 in\"", ""),
        ("gap = { length = \"24 in\" }", ""),
        ("gap = { length = \"24 in\", height = \"0 in\" }", ""),
        ("gap = { length = \"24 in\", height = \"10 cm\" }", ""),
        ("gap = { length = \"0 in\", height = \"1 mm\" }", ""),
        ("gap = { length = \"37 in\", height = \"1 mm\" }", ""),
        ("gap = { length = \"24 in\", width = \"1 mm\" }", ""),
        ("floor = \"concrete\"", ""),
        ("[opening.floor]\nstrength = \"25 psi\"", ""),
        (
            "[opening.jamb]\nmaterial = \"masonry\"\nstrength = \"10 MPa\"",
            "",
        ),
    ] {
        let text = format!(
            "name = \"Lock\"\nlocation = {{ longitude = -74.0335, latitude = 40.74 }}\nthreshold = \"8.1 ft NAVD88\"\n[[opening]]\nid = \"door\"\nwidth = \"36 in\"\n{lines}\n"
        );
        let error = Site::from_toml("lock.toml", &text).unwrap_err().to_string();
        assert_eq!(error, format!("lock.toml, {expected}"), "{lines}");
    }
}
