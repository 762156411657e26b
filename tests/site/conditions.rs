//! Conditions: what is absent, what can be named, and the bounds of what is taken.

use sillmark::anchor::{AnchorSystem, CastInShape, Fixing};
use sillmark::site::{CombinationChoice, Conditions};
use sillmark::statement::Choice;

fn read(text: &str) -> Result<Conditions, String> {
    Conditions::from_toml("yard.toml", text).map_err(|error| error.to_string())
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
fn the_bounds_that_messages_offer_are_taken() {
    let concrete = "[floor]\nmaterial = \"concrete\"";
    let bolts = "[floor]\nanchors = \"headed bolt\"";
    let sleeves = "[floor]\nanchors = \"drop-in sleeve\"";
    for (table, key, bounds) in [
        ("[loads]", "extra_depth", ["0 ft", "9.8 ft", "3 m"]),
        ("[inside]", "floor_area", ["1.1 ft2", "0.1 m2", "929000 m2"]),
        ("[inside]", "greatest_depth", ["0.04 in", "32 ft", "10 m"]),
        ("[inside]", "pump_margin", ["1", "1.5", "10"]),
        ("[fitting]", "time_a_post", ["1/60 min", "24 h", "1 day"]),
        ("[fitting]", "lift", ["2.3 lb", "220 lb", "100 kg"]),
        ("[fitting]", "parties", ["1", "2", "1000"]),
        (concrete, "strength", ["1000 psi", "6.9 MPa", "20000 psi"]),
        (concrete, "thickness", ["0.8 in", "20 mm", "32 ft"]),
        (concrete, "lambda", ["0.75", "0.85", "1"]),
        (bolts, "head_bearing", ["0.008 in2", "5 mm2", "15.5 in2"]),
        (bolts, "embedment", ["0.4 in", "10 mm", "6.5 ft"]),
        (bolts, "steel_area", ["0.008 in2", "15.5 in2", "100 cm2"]),
        (bolts, "steel_ultimate", ["14.6 ksi", "100 MPa", "290 ksi"]),
        (bolts, "edge_left", ["0.2 in", "5 mm", "Far"]),
        (sleeves, "coefficient_cracked", ["14", "17", "24"]),
        (sleeves, "coefficient_uncracked", ["14", "24", "34"]),
        (sleeves, "critical_edge", ["0.4 in", "10 mm", "32 ft"]),
        (sleeves, "pullout", ["23 lb", "2200 kip", "Does not govern"]),
        (sleeves, "sleeve_shear", ["23 lb", "0.1 kN", "2200 kip"]),
    ] {
        for bound in bounds {
            let text = format!("{table}\n{key} = \"{bound}\"\n");
            assert_eq!(read(&text).map(|_| ()), Ok(()), "{text}");
        }
    }
}
