//! The demonstration scenario, whole.

use std::path::Path;

use insta::assert_snapshot;
use serde_json::Value;

use super::scratch::Scratch;

/// The scenario's files in a folder of their own.
fn alder_lock() -> Scratch {
    let scratch = Scratch::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/alder-lock");
    for name in ["site.toml", "zones.geojson", "terrain.tif"] {
        std::fs::copy(folder.join(name), scratch.path(name)).unwrap();
    }
    scratch
}

const RUN: [&str; 6] = [
    "site",
    "site.toml",
    "--zones",
    "zones.geojson",
    "--dem",
    "terrain.tif",
];

#[test]
fn in_feet() {
    let page = alder_lock().answer(&RUN);
    assert_snapshot!("page_in_feet", page);
}

#[test]
fn in_metres() {
    let page = alder_lock().answer(&[&RUN[..], &["--units", "si"]].concat());
    assert_snapshot!("page_in_metres", page);
}

#[test]
fn with_its_trail() {
    let text = alder_lock().answer(&[&RUN[..], &["--trail"]].concat());
    let (_, trail) = text.split_once("How each figure came about\n").unwrap();
    let of_the_site_and_first_door: Vec<_> = trail
        .lines()
        .take_while(|line| !line.contains("\"yard door\""))
        .collect();
    assert_snapshot!(of_the_site_and_first_door.join("\n"), @r#"
    - flood zone: AE, the polygon that holds the place [flood_zones, feature ALDER_2]
    - ground: 611.93 ft NAVD88, bilinear between the four nearest cell centres of the terrain
      [terrain.tif]
    - lowest ground near the building: 612.00 ft NAVD88, lowest adjacent grade as stated [site file]
    - highest ground near the building: 613.62 ft NAVD88, highest of 379 points of the terrain
      within 33 ft [terrain.tif]
    - flood level, 1 % annual chance: 614.00 ft NAVD88, level of the zone: level of zone AE; a
      printed level lies within half a unit of its last digit (FEMA course IS-273, step 5); standard
      deviation of that: unit / √12 [flood_zones, feature ALDER_2]
    - standard deviation of the flood level: 0.29 ft, level of zone AE; a printed level lies within
      half a unit of its last digit (FEMA course IS-273, step 5); standard deviation of that: unit
      / √12
    - flood level, other source: 613.93 ft NAVD88, edge of the zone on the terrain: ground along the
      edge of the zone, 63 samples within 110 m (360 ft), the zone moved by 0.0 m to lie best on the
      terrain; standard deviation from their spread; not used, a source with more authority is there
      [edge of zone AE (flood_zones, feature ALDER_2) on terrain.tif; FEMA 265, pages V-3 to V-5]
    - freeboard: 1.00 ft, rule us-nfip-floodproofing: NFIP floodproofing with full rating credit
      [FEMA glossary, floodproofing certificate: full credit at base flood elevation + 1 ft]
    - design level: 615.00 ft NAVD88, flood level + 1.00 ft [rule us-nfip-floodproofing]
    - sill at "front door": 612.90 ft NAVD88, no sill is stated for the opening: the building's
      threshold [site.toml, line 5]
    - depth at "front door": 1.10 ft, flood level − sill, not less than nothing
    - protection height at "front door": 2.10 ft, design level − sill, not less than nothing
    - planks at "front door": 5, whole planks that reach the protection height [Demonstration kit,
      6 in planks (invented)]
    - barrier height at "front door": 2.50 ft, planks × cover height of one plank [invented for the
      demonstration scenario (invented)]
    - pressure at the sill at "front door", water at the design level: 131.0 psf, γ·h, still fresh
      water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - force at "front door", water at the design level: 137.6 lb/ft, γ·h²/2, still fresh water [FEMA
      P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - moment about the sill at "front door", water at the design level: 96.3 ft-lb/ft, γ·h³/6, still
      fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - pressure at the sill at "front door", water at the top of the barrier: 156.0 psf, γ·h, still
      fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - force at "front door", water at the top of the barrier: 195.0 lb/ft, γ·h²/2, still fresh water
      [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - moment about the sill at "front door", water at the top of the barrier: 162.5 ft-lb/ft,
      γ·h³/6, still fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh,
      64.0 pcf salt]
    - standard deviation of the sill at "front door": 0.07 ft, surveyed sill: levelling or satellite
      survey tied to a bench mark; the rounding of the written height comes on top [the class of
      work behind an elevation certificate (common practice, no source)]
    - chance that the assessed event passes the top at "front door": less than 0.1 %, normal
      distribution about the flood level with the standard deviations of level and sill; not the
      flood study itself
    - verdict at "front door": protect, the worst that the opening's reasons ask for
      [data/limits.toml]
    "#);
}

/// The figures of the JSON, without its sentences.
fn figures(result: &Value) -> String {
    let mut result = result.clone();
    for name in ["cautions", "trail", "software"] {
        result.as_object_mut().unwrap().remove(name);
    }
    serde_json::to_string_pretty(&result).unwrap()
}

#[test]
fn as_json() {
    let result = alder_lock().json(&RUN);
    assert_snapshot!("figures", figures(&result));
}

#[test]
fn a_stated_sill_points_to_its_own_line() {
    let result = alder_lock().json(&RUN);
    let reference = |quantity: &str| {
        let steps = result["trail"].as_array().unwrap();
        let step = steps.iter().find(|step| step["quantity"] == quantity);
        step.unwrap()["reference"].as_str().unwrap().to_owned()
    };
    let line = |text: &str| {
        let site = alder_lock().read("site.toml");
        let line = site
            .lines()
            .position(|line| line.starts_with(text))
            .unwrap();
        format!("site.toml, line {}", line + 1)
    };
    assert_eq!(
        reference("sill at \"cart shed\""),
        line("sill = \"612.5 ft")
    );
    assert_eq!(
        reference("sill at \"yard door\""),
        line("sill_above_threshold")
    );
    assert_eq!(reference("sill at \"front door\""), line("threshold"));
}
