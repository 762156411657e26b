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
    scratch.site_with("8.1 ft NAVD88", "9.1 ft NAVD88");
    let result = scratch.json(&[&HOUSE[..], &["--sections", "lines.geojson"]].concat());
    assert_eq!(result["flood_level"], Value::Null);
    assert_eq!(result["verdict"], "above");

    // A sill below the river beside contradicts the map: never a dry building.
    scratch.site_with("8.1 ft NAVD88", "8.1 ft NAVD88");
    let result = scratch.json(&[&HOUSE[..], &["--sections", "lines.geojson"]].concat());
    assert_eq!(result["flood_level"], Value::Null);
    assert_eq!(result["verdict"], "unresolved");
    let reason = result["openings"][0]["reasons"][0].as_str().unwrap();
    assert!(
        reason.contains("cross-sections beside it stand at 8.50 ft NAVD88, 0.40 ft above the sill"),
        "{reason}"
    );
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

/// Two datums may agree at a place: the level is then on the other datum all the same.
#[test]
fn a_stated_offset_of_nothing_still_changes_the_datum() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "8.1 ft NGVD29");
    let offset = [
        "--datum-offset",
        "NGVD29 -> NAVD88 = 0 ft; county study of 2006",
    ];
    let result = scratch.json(&[&HOUSE[..], &offset].concat());
    assert_eq!(result["datum"], "NGVD29");
    assert!((feet(&result["openings"][0]["protection_height_m"]) - 1.9).abs() < 1e-6);
    assert!(result["trail"].to_string().contains("county study of 2006"));
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

#[test]
fn sources_that_differ_beyond_their_uncertainty_are_a_caution_with_both_values() {
    let scratch = house_between_lines();
    scratch.zones(&[zone(&json!({"STATIC_BFE": 12}))]);
    let result = scratch.json(&[&HOUSE[..], &["--sections", "lines.geojson"]].concat());
    assert_eq!(result["flood_level"]["source"], "zone-static");
    let cautions = result["cautions"].as_array().unwrap();
    let said = cautions
        .iter()
        .find(|caution| caution["code"] == "levels-disagree")
        .unwrap();
    let text = said["text"].as_str().unwrap();
    assert!(
        text.ends_with("(level of the zone 12.00 ft NAVD88, cross-sections 8.50 ft NAVD88; they differ by 3.50 ft)"),
        "{text}"
    );
}

/// Terrain and water in metres on NAVD88, which the file says.
const SAYS_ALL: &str = "EPSG:4269+5703";

/// The house on a zone without a level, with surfaces of the 10 % and the 1 % flood.
fn house_under_surfaces() -> Scratch {
    let scratch = house_between_lines();
    scratch.dem("frequent.tif", SAYS_ALL, |_, _| 2.0);
    scratch.dem("rare.tif", SAYS_ALL, |_, _| 3.0);
    scratch
}

const SURFACES: [&str; 4] = ["--surface", "10%=frequent.tif", "--surface", "1%=rare.tif"];

#[test]
fn a_surface_goes_before_lines() {
    let scratch = house_under_surfaces();
    let result = scratch.json(&[&HOUSE[..], &SURFACES, &["--sections", "lines.geojson"]].concat());
    assert_eq!(result["flood_level"]["source"], "surface-raster");
    assert_eq!(result["flood_level"]["value_m"], 3.0);
    assert_eq!(
        result["flood_level"]["others"][0]["source"],
        "cross-sections"
    );
    assert_eq!(result["flood_level"]["curve"].as_array().unwrap().len(), 2);
}

#[test]
fn a_flood_between_two_surfaces_is_read_from_the_curve() {
    let scratch = house_under_surfaces();
    let result = scratch.json(&[&HOUSE[..], &SURFACES, &["--chance", "4%"]].concat());
    // Linear in the normal deviate (methods of probability paper): z 1.2816, 1.7507, 2.3263.
    let expected = 2.0 + (1.7507 - 1.2816) / (2.3263 - 1.2816);
    let level = result["flood_level"]["value_m"].as_f64().unwrap();
    assert!((level - expected).abs() < 1e-3, "{level} {expected}");
    let trail = result["trail"].to_string();
    assert!(trail.contains("log-probability interpolation"), "{trail}");
}

#[test]
fn a_flood_rarer_than_the_surfaces_is_not_extrapolated() {
    let scratch = house_under_surfaces();
    let result = scratch.json(&[&HOUSE[..], &SURFACES, &["--chance", "0.2%"]].concat());
    assert_eq!(result["flood_level"], Value::Null);
    assert_eq!(result["verdict"], "unresolved");
}

#[test]
fn a_zone_of_another_flood_than_the_assessed_one_says_so() {
    let scratch = Scratch::new();
    let result = scratch.json(&[&HOUSE[..], &["--chance", "0.2%"]].concat());
    let reason = result["openings"][0]["reasons"][0].as_str().unwrap();
    assert!(
        reason.contains("the zone is that of the 1 % flood, and nothing is extrapolated"),
        "{reason}"
    );
}

#[test]
fn without_zones_the_reason_tells_what_the_other_sources_said() {
    let scratch = house_between_lines();
    let far =
        json!({"type": "FeatureCollection", "features": [line(-73.99, 8.0), line(-73.98, 10.0)]});
    scratch.write("lines.geojson", far.to_string());
    let result = scratch.json(&["site", "site.toml", "--lines", "lines.geojson"]);
    let reason = result["openings"][0]["reasons"][0].as_str().unwrap();
    assert!(
        reason.contains("no flood zones were given") && reason.contains("of the last line"),
        "{reason}"
    );
}

#[test]
fn how_often_water_reaches_the_sill_is_said_with_its_bounds() {
    let scratch = house_under_surfaces();
    // The sill lies at 8.1 ft, 2.469 m: between the two surfaces; the top above both.
    let result = scratch.json(&[&HOUSE[..], &SURFACES, &["--years", "10"]].concat());
    let opening = &result["openings"][0];
    let sill = &opening["water_at_sill"];
    let annual = sill["annual_chance"].as_f64().unwrap();
    assert!((0.01..0.1).contains(&annual), "{sill}");
    let over = sill["over_years"].as_f64().unwrap();
    assert!(
        (over - (1.0 - (1.0 - annual).powi(10))).abs() < 1e-5,
        "{sill}"
    );
    assert_eq!(opening["water_at_top"]["beyond"], "rarer than 1 %");
}

#[test]
fn a_depth_stands_on_the_terrain() {
    let scratch = house_between_lines();
    scratch.dem("ground.tif", SAYS_ALL, |_, _| 2.0);
    scratch.dem("depth.tif", "EPSG:4269", |_, _| 0.75);
    let depth = [
        "--dem",
        "ground.tif",
        "--depth",
        "1%=depth.tif",
        "--depth-unit",
        "m",
    ];
    let result = scratch.json(&[&HOUSE[..], &depth].concat());
    assert_eq!(result["flood_level"]["source"], "depth-raster");
    assert_eq!(result["flood_level"]["value_m"], 2.75);
}

#[test]
fn a_sheet_flow_zone_counts_from_the_highest_ground_of_the_terrain() {
    let scratch = Scratch::new();
    scratch.zones(&[zone(
        &json!({"FLD_ZONE": "AO", "STATIC_BFE": -9999, "DEPTH": 2}),
    )]);
    scratch.dem("ground.tif", SAYS_ALL, |_, _| 2.0);
    let result = scratch.json(&[&HOUSE[..], &["--dem", "ground.tif", "--dem-sd", "QL2"]].concat());
    assert_eq!(result["flood_level"]["source"], "depth-over-grade");
    assert!(
        (result["flood_level"]["value_m"].as_f64().unwrap() - 2.6096).abs() < 1e-6,
        "{result}"
    );
    assert_eq!(result["ground_sd_m"], 0.1);
}

#[test]
fn an_extent_of_another_country_by_its_chance() {
    let scratch = Scratch::new();
    scratch.zones(&[zone(&json!({}))]);
    let extent = [
        "--zones-schema",
        "extent:1%",
        "--zones-datum",
        "ODN",
        "--zones-unit",
        "m",
    ];
    let result = scratch.json(&[&HOUSE[..], &extent].concat());
    assert_eq!(result["verdict"], "unresolved");
    let message = scratch.refused(&[&HOUSE[..], &["--zones-schema", "wales"]].concat());
    assert!(message.starts_with("error: option --zones-schema: zones schema \"wales\": there is no such schema; accepted: nfhl, england, extent:CHANCE"), "{message}");
}

#[test]
fn a_stated_uncertainty_stands_in_for_ours() {
    let scratch = Scratch::new();
    scratch.site_and("[uncertainty]\nzone_static = \"0.5 ft\"");
    let result = scratch.site_json();
    assert!(
        (feet(&result["flood_level"]["sd_m"]) - 0.5).abs() < 1e-5,
        "{result}"
    );
}

#[test]
fn a_surface_without_chance_or_file_is_refused() {
    let scratch = house_under_surfaces();
    let message = scratch.refused(&[&HOUSE[..], &["--surface", "rare.tif"]].concat());
    assert_eq!(
        message,
        "error: option --surface: raster \"rare.tif\": it has no = between chance and file; accepted: an annual chance and a file, such as 1%=wse.tif\n"
    );
    let message = scratch.refused(&[&HOUSE[..], &["--surface", "2=rare.tif"]].concat());
    assert!(
        message.contains("it is neither a percentage nor"),
        "{message}"
    );
}
