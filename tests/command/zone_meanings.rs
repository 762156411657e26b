//! What a zone leads to.

use serde_json::{Value, json};

use super::scratch::{SITE, Scratch, zone};

/// The answer for the house of [`SITE`] on these zones.
fn on(zones: &[Value]) -> Value {
    let scratch = Scratch::new();
    scratch.zones(zones);
    scratch.site_json()
}

/// The same, its highest adjacent grade surveyed at 8 ft.
fn with_grade(zones: &[Value]) -> Value {
    let scratch = Scratch::new();
    scratch.zones(zones);
    let grade = "highest_adjacent_grade = \"8 ft NAVD88\"\noccupancy";
    scratch.write("site.toml", SITE.replacen("occupancy", grade, 1));
    scratch.site_json()
}

fn reason(result: &Value) -> &str {
    result["openings"][0]["reasons"][0].as_str().unwrap()
}

fn level_ft(result: &Value) -> f64 {
    result["flood_level"]["value_m"].as_f64().unwrap() / 0.3048
}

const NONE: i32 = -9999;

#[test]
fn a_code_nobody_knows_is_unresolved() {
    for code in ["Q", "", "D", "AREA NOT INCLUDED", "ae?"] {
        let result = on(&[zone(&json!({"FLD_ZONE": code, "STATIC_BFE": NONE}))]);
        assert_eq!(result["verdict"], "unresolved", "{code}");
    }
}

#[test]
fn flooded_without_a_level_is_unresolved() {
    for code in ["A", "AE", "VE", "V", "AO", "AH"] {
        let result = on(&[zone(&json!({"FLD_ZONE": code, "STATIC_BFE": NONE}))]);
        assert_eq!(result["verdict"], "unresolved", "{code}");
        assert_eq!(result["flood_level"], Value::Null, "{code}");
    }
}

#[test]
fn a_level_that_cannot_be_read_is_unresolved_and_says_why() {
    let result = on(&[zone(&json!({"V_DATUM": null}))]);
    assert_eq!(result["verdict"], "unresolved");
    assert!(
        reason(&result)
            .contains("level 9 has no vertical datum and is not used; state it with --zones-datum")
    );
    let result = on(&[zone(&json!({"LEN_UNIT": null}))]);
    assert!(reason(&result).contains("state it with --zones-unit"));
}

#[test]
fn a_levee_is_unresolved() {
    let result = on(&[zone(&json!({
        "FLD_ZONE": "X", "ZONE_SUBTY": "AREA WITH REDUCED FLOOD RISK DUE TO LEVEE",
        "SFHA_TF": "F", "STATIC_BFE": NONE,
    }))]);
    assert_eq!(result["verdict"], "unresolved");
}

#[test]
fn a_dry_code_with_a_wet_flag_is_unresolved() {
    let result = on(&[zone(&json!({
        "FLD_ZONE": "X", "ZONE_SUBTY": "AREA OF MINIMAL FLOOD HAZARD",
        "SFHA_TF": "T", "STATIC_BFE": NONE,
    }))]);
    assert_eq!(result["verdict"], "unresolved");
}

#[test]
fn sheet_flow_stands_on_the_highest_grade() {
    let depth = |number: Value| json!({"FLD_ZONE": "AO", "STATIC_BFE": NONE, "DEPTH": number});
    assert!(reason(&on(&[zone(&depth(json!(1)))])).contains("state highest_adjacent_grade"));
    assert!((level_ft(&with_grade(&[zone(&depth(json!(3)))])) - 11.0).abs() < 1e-5);
    // 44 CFR 60.3(c)(7): two feet where the map has no number.
    for none in [json!(0), json!(NONE), Value::Null] {
        assert!((level_ft(&with_grade(&[zone(&depth(none))])) - 10.0).abs() < 1e-5);
    }
}

#[test]
fn a_depth_that_cannot_be_read_is_not_two_feet() {
    let zone = zone(&json!({"FLD_ZONE": "AO", "STATIC_BFE": NONE, "DEPTH": 3, "LEN_UNIT": null}));
    let result = with_grade(&[zone]);
    assert_eq!(result["verdict"], "unresolved");
    assert!(
        reason(&result).contains("depth 3 has no unit and is not used"),
        "{}",
        reason(&result)
    );
}

#[test]
fn the_higher_of_two_levels_counts() {
    let higher = json!({"FLD_AR_ID": "Z2", "STATIC_BFE": 12});
    for zones in [
        [zone(&json!({})), zone(&higher)],
        [zone(&higher), zone(&json!({}))],
    ] {
        let result = on(&zones);
        assert!((level_ft(&result) - 12.0).abs() < 1e-5);
        assert_eq!(result["zone"]["feature"], "Z2");
    }
}

#[test]
fn waves_without_a_level_do_not_borrow_the_level_of_calm_water() {
    let waves = zone(&json!({"FLD_AR_ID": "Z2", "FLD_ZONE": "VE", "STATIC_BFE": NONE}));
    let scratch = Scratch::new();
    scratch.zones(&[zone(&json!({})), waves]);
    // Above the calm level and its freeboard, but by how much the waves rise nobody says.
    scratch.site_with("8.1 ft", "10.5 ft");
    let result = scratch.site_json();
    assert_eq!(result["zone"]["code"], "VE");
    assert_eq!(result["verdict"], "unresolved");
    assert_eq!(result["flood_level"], Value::Null);
}

#[test]
fn a_floodway_without_a_level_has_that_of_its_zone() {
    let floodway = json!({"FLD_AR_ID": "Z2", "ZONE_SUBTY": "FLOODWAY", "STATIC_BFE": NONE});
    let result = on(&[zone(&json!({})), zone(&floodway)]);
    assert!((level_ft(&result) - 9.0).abs() < 1e-5);
    assert_eq!(result["verdict"], "engineer");
}

#[test]
fn a_stated_level_decides_and_the_map_is_listed() {
    let scratch = Scratch::new();
    scratch
        .site_and("[[flood_level]]\nevent = \"1%\"\nlevel = \"11 ft NAVD88\"\nsource = \"study\"");
    let result = scratch.site_json();
    assert_eq!(result["flood_level"]["source"], "stated");
    assert_eq!(result["flood_level"]["others"][0]["source"], "zone-static");
    assert!((level_ft(&result) - 11.0).abs() < 1e-5);
}
