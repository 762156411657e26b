//! Real places in Hudson County, New Jersey (National Flood Hazard Layer of 2006).
//!
//! The places were chosen inside one polygon each by another library (shapely, a point in
//! polygon test over all of them).

use approx::assert_abs_diff_eq;
use serde_json::Value;

use super::scratch::Scratch;
use crate::support::open_data;

/// The county's zones, beside the scratch files.
fn hudson() -> Option<Scratch> {
    let layer = open_data("hudson/S_FLD_HAZ_AR.shp")?;
    let scratch = Scratch::new();
    for ending in ["shp", "shx", "dbf", "prj"] {
        let part = format!("S_FLD_HAZ_AR.{ending}");
        std::fs::copy(layer.with_extension(ending), scratch.path(&part)).unwrap();
    }
    Some(scratch)
}

fn at(scratch: &Scratch, place: &str, threshold: &str) -> Value {
    scratch.json(&[
        "site",
        "--at",
        place,
        "--threshold",
        threshold,
        "--opening",
        "door=36 in",
        "--zones",
        "S_FLD_HAZ_AR.shp",
        "--rule",
        "us-nfip-floodproofing",
    ])
}

fn codes(result: &Value) -> Vec<&str> {
    let cautions = result["cautions"].as_array().unwrap();
    cautions
        .iter()
        .map(|caution| caution["code"].as_str().unwrap())
        .collect()
}

#[test]
fn a_door_below_the_flood() {
    let Some(scratch) = hudson() else { return };
    let result = at(&scratch, "-74.0335,40.7400", "8.1 ft NAVD88");
    assert_eq!(result["zone"]["code"], "AE");
    assert_eq!(result["flood_level"]["source"], "zone-static");
    let number = |value: &Value| value.as_f64().unwrap();
    // 9 ft and 10 ft of 0.3048 m.
    assert_abs_diff_eq!(number(&result["flood_level"]["value_m"]), 2.7432);
    assert_abs_diff_eq!(number(&result["design_level"]["value_m"]), 3.048);
    let door = &result["openings"][0];
    assert_eq!(door["verdict"], "protect");
    // 9 + 1 − 8.1 = 1.9 ft; planks of 6 in: four, 2 ft.
    assert_eq!(door["protection_height_m"].to_string(), "0.57912");
    assert_eq!(door["planks"], 4);
    assert_abs_diff_eq!(number(&door["barrier_height_m"]), 0.6096);

    // By hand, with 62.4 pcf: 62.4 × 1.9² / 2 = 112.632 lb/ft, 62.4 × 1.9³ / 6 = 71.3336 lb,
    // 62.4 × 1.9 = 118.56 psf; 1 lb = 4.4482216152605 N, 1 ft = 0.3048 m.
    let pound = 4.448_221_615_260_5;
    assert_abs_diff_eq!(
        number(&door["force_n_per_m"]),
        112.632 * pound / 0.3048,
        epsilon = 1e-5
    );
    assert_abs_diff_eq!(number(&door["moment_n"]), 71.3336 * pound, epsilon = 1e-5);
    let square_foot = 0.3048 * 0.3048;
    assert_abs_diff_eq!(
        number(&door["pressure_pa"]),
        118.56 * pound / square_foot,
        epsilon = 1e-5
    );
    // At the top of the barrier, 2 ft: 124.8 lb/ft and 83.2 lb.
    let top = &door["at_top"];
    assert_abs_diff_eq!(
        number(&top["force_n_per_m"]),
        124.8 * pound / 0.3048,
        epsilon = 1e-5
    );
    assert_abs_diff_eq!(number(&top["moment_n"]), 83.2 * pound, epsilon = 1e-5);
}

#[test]
fn minimal_hazard_is_above_and_says_that_it_is_no_promise() {
    let Some(scratch) = hudson() else { return };
    let result = at(&scratch, "-74.0255,40.7440", "8.1 ft NAVD88");
    assert_eq!(result["zone"]["subtype"], "AREA OF MINIMAL FLOOD HAZARD");
    assert_eq!(result["verdict"], "above");
    assert_eq!(result["flood_level"], Value::Null);
    assert_eq!(result["openings"][0]["protection_height_m"], Value::Null);
    assert!(codes(&result).contains(&"outside-mapped-flood"));
}

#[test]
fn an_area_not_included_is_unresolved() {
    let Some(scratch) = hudson() else { return };
    let result = at(&scratch, "-74.07615,40.78112", "900 ft NAVD88");
    assert_eq!(result["zone"]["code"], "AREA NOT INCLUDED");
    assert_eq!(result["verdict"], "unresolved");
}

#[test]
fn outside_every_polygon_is_unresolved() {
    let Some(scratch) = hudson() else { return };
    let result = at(&scratch, "-74.2,40.753", "900 ft NAVD88");
    assert_eq!(result["zone"], Value::Null);
    assert_eq!(result["verdict"], "unresolved");
}

#[test]
fn ponding_has_its_level() {
    let Some(scratch) = hudson() else { return };
    let result = at(&scratch, "-74.09923,40.7037", "8.1 ft NAVD88");
    assert_eq!(result["zone"]["code"], "AH");
    assert_eq!(result["verdict"], "protect");
    assert_eq!(
        result["openings"][0]["protection_height_m"].to_string(),
        "0.57912"
    );
}

#[test]
fn breaking_waves_need_an_engineer() {
    let Some(scratch) = hudson() else { return };
    let result = at(&scratch, "-73.9913,40.79457", "10.5 ft NAVD88");
    assert_eq!(result["zone"]["code"], "VE");
    assert_eq!(result["verdict"], "engineer");
    assert!(codes(&result).contains(&"coastal-zone"));
    // 11 + 1 ft: a sill above that is above, wave crest included.
    assert_eq!(
        at(&scratch, "-73.9913,40.79457", "12.1 ft NAVD88")["verdict"],
        "above"
    );
}

#[test]
fn a_void_of_the_terrain_is_said() {
    let Some(scratch) = hudson() else { return };
    let Some(dem) = open_data("hudson/hoboken_dem.tif") else {
        return;
    };
    std::fs::copy(dem, scratch.path("dem.tif")).unwrap();
    // The point of the validation in which this raster has a void.
    let result = scratch.json(&[
        "site",
        "--at",
        "-74.038,40.753",
        "--threshold",
        "8.1 ft NAVD88",
        "--opening",
        "door=36 in",
        "--zones",
        "S_FLD_HAZ_AR.shp",
        "--dem",
        "dem.tif",
        "--dem-unit",
        "m",
        "--dem-datum",
        "NAVD88",
    ]);
    assert_eq!(result["ground_m"], Value::Null);
    assert!(codes(&result).contains(&"ground-unknown"));
}
