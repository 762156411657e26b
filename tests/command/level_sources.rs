//! Sources of the flood level, as a user gives them.

use serde_json::{Value, json};

use super::scratch::{SITE, Scratch, zone};

/// A line from south to north at a longitude, with a level in feet.
fn line(longitude: f64, level: f64) -> Value {
    json!({
        "type": "Feature",
        "properties": {"WTR_NM": "Mill Brook", "WSEL_REG": level, "ELEV": level, "LEN_UNIT": "Feet", "V_DATUM": "NAVD88"},
        "geometry": {"type": "LineString", "coordinates": [[longitude, 39.995], [longitude, 40.005]]},
    })
}

/// The house at −74 on a zone without a level of its own, between a line 0.001 degrees west
/// and one 0.003 degrees east.
fn house_between_lines() -> Scratch {
    let scratch = Scratch::new();
    scratch.zones(&[zone(
        &json!({"STATIC_BFE": -9999, "V_DATUM": null, "LEN_UNIT": null}),
    )]);
    let lines =
        json!({"type": "FeatureCollection", "features": [line(-74.001, 8.0), line(-73.997, 10.0)]});
    scratch.write("lines.geojson", lines.to_string());
    scratch
}

fn feet(value: &Value) -> f64 {
    value.as_f64().unwrap() / 0.3048
}

const HOUSE: [&str; 4] = ["site", "site.toml", "--zones", "zones.geojson"];

#[test]
fn between_two_cross_sections_the_level_goes_by_distance() {
    let scratch = house_between_lines();
    let result = scratch.json(&[&HOUSE[..], &["--sections", "lines.geojson"]].concat());
    let level = &result["flood_level"];
    assert_eq!(level["source"], "cross-sections");
    assert!((feet(&level["value_m"]) - 8.5).abs() < 1e-3, "{level}");
    assert_eq!(result["verdict"], "protect");
}

#[test]
fn cross_sections_go_before_flood_level_lines() {
    let scratch = house_between_lines();
    let both = ["--lines", "lines.geojson", "--sections", "lines.geojson"];
    let result = scratch.json(&[&HOUSE[..], &both].concat());
    assert_eq!(result["flood_level"]["source"], "cross-sections");
    assert_eq!(result["flood_level"]["others"][0]["source"], "level-lines");
}

#[test]
fn lines_do_not_reach_where_the_map_says_outside() {
    let scratch = house_between_lines();
    let outside = json!({"FLD_ZONE": "X", "ZONE_SUBTY": "AREA OF MINIMAL FLOOD HAZARD", "SFHA_TF": "F", "STATIC_BFE": -9999});
    scratch.zones(&[zone(&outside)]);
    let result = scratch.json(&[&HOUSE[..], &["--sections", "lines.geojson"]].concat());
    assert_eq!(result["flood_level"], Value::Null);
    assert_eq!(result["verdict"], "above");
}

#[test]
fn too_far_beyond_the_last_line_it_is_unresolved_and_says_so() {
    let scratch = house_between_lines();
    let lines =
        json!({"type": "FeatureCollection", "features": [line(-73.99, 8.0), line(-73.98, 10.0)]});
    scratch.write("lines.geojson", lines.to_string());
    let result = scratch.json(&[&HOUSE[..], &["--lines", "lines.geojson"]].concat());
    assert_eq!(result["verdict"], "unresolved");
    let reason = result["openings"][0]["reasons"][0].as_str().unwrap();
    assert!(
        reason.contains("of the last line") && reason.contains("500 ft"),
        "{reason}"
    );
}

#[test]
fn a_stated_offset_carries_a_level_to_the_datum_of_the_threshold() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "9.2 ft NGVD29");
    let offset = [
        "--datum-offset",
        "NGVD29 -> NAVD88 = -1.1 ft; county study of 2006",
    ];
    let result = scratch.json(&[&HOUSE[..], &offset].concat());
    assert_eq!(result["datum"], "NGVD29");
    assert!(
        (feet(&result["flood_level"]["value_m"]) - 10.1).abs() < 1e-6,
        "{result}"
    );
    assert!((feet(&result["openings"][0]["protection_height_m"]) - 1.9).abs() < 1e-6);
    let trail = result["trail"].to_string();
    assert!(trail.contains("county study of 2006"), "{trail}");
}

#[test]
fn a_stated_offset_in_the_site_file() {
    let scratch = Scratch::new();
    let offset = "[[datum_offset]]\noffset = \"NGVD29 -> NAVD88 = -1.1 ft\"\nsource = \"county study of 2006\"\n";
    let site = SITE.replace("8.1 ft NAVD88", "9.2 ft NGVD29");
    scratch.write("site.toml", format!("{site}\n{offset}"));
    let result = scratch.site_json();
    assert!((feet(&result["openings"][0]["protection_height_m"]) - 1.9).abs() < 1e-6);
}

#[test]
fn an_offset_without_a_source_is_refused() {
    let scratch = Scratch::new();
    let message = scratch.refused(
        &[
            &HOUSE[..],
            &["--datum-offset", "NGVD29 -> NAVD88 = -1.1 ft"],
        ]
        .concat(),
    );
    assert_eq!(
        message,
        "error: option --datum-offset: offset \"NGVD29 -> NAVD88 = -1.1 ft\": it has no source behind a semicolon; \
         accepted: \"NGVD29 -> NAVD88 = -1.1 ft; county flood study of 2006, table 2\"\n"
    );
}
