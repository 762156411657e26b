//! What the reader is told beside the figures.

use serde_json::{Value, json};

use super::scratch::{SITE, Scratch, zone, zone_over};

fn caution<'result>(result: &'result Value, code: &str) -> Option<&'result str> {
    let cautions = result["cautions"].as_array().unwrap();
    let found = cautions.iter().find(|caution| caution["code"] == code);
    found.map(|caution| caution["text"].as_str().unwrap())
}

fn text(result: &Value, code: &str) -> String {
    caution(result, code)
        .unwrap_or_else(|| panic!("no {code}: {}", result["cautions"]))
        .to_owned()
}

#[test]
fn overlapping_zones() {
    let scratch = Scratch::new();
    let dry = json!({
        "FLD_AR_ID": "Z2", "FLD_ZONE": "X", "ZONE_SUBTY": "AREA OF MINIMAL FLOOD HAZARD",
        "SFHA_TF": "F", "STATIC_BFE": -9999,
    });
    scratch.zones(&[zone(&dry), zone(&json!({}))]);
    let said = text(&scratch.site_json(), "zones-overlap");
    assert!(
        said.ends_with(
            "(taken: AE; also here: X (AREA OF MINIMAL FLOOD HAZARD) (zones, feature Z2))"
        ),
        "{said}"
    );
}

#[test]
fn a_place_on_an_edge() {
    let scratch = Scratch::new();
    scratch.zones(&[zone_over(&json!({}), [-74.0, 39.99, -73.99, 40.01])]);
    let result = scratch.site_json();
    assert_eq!(result["verdict"], "protect");
    text(&result, "zone-edge");
}

#[test]
fn no_zones_but_a_stated_level() {
    let scratch = Scratch::new();
    scratch
        .site_and("[[flood_level]]\nevent = \"1%\"\nlevel = \"9 ft NAVD88\"\nsource = \"study\"");
    let said = text(&scratch.json(&["site", "site.toml"]), "zone-unknown");
    assert!(said.ends_with("(no flood zones were given)"), "{said}");
    let page = scratch.answer(&["site", "site.toml"]);
    assert!(page.contains("no flood zones were given"), "{page}");
    assert!(!page.contains("no polygon holds the place"), "{page}");
    assert_eq!(caution(&scratch.site_json(), "zone-unknown"), None);
}

#[test]
fn a_rule_that_adds_nothing() {
    let scratch = Scratch::new();
    for rule in ["none", "us-nfip-minimum"] {
        scratch.site_with("us-nfip-floodproofing", rule);
        text(&scratch.site_json(), "no-freeboard");
    }
    scratch.site_with("us-nfip-floodproofing", "us-residential-code-r322");
    assert_eq!(caution(&scratch.site_json(), "no-freeboard"), None);
}

#[test]
fn water_on_the_wall_below_a_sill_that_is_high_enough() {
    let scratch = Scratch::new();
    // 10 ft design level, 10.5 ft threshold, ground at 4 ft: 6 ft of water on the wall.
    let high = SITE.replace("8.1 ft", "10.5 ft").replacen(
        "occupancy",
        "lowest_adjacent_grade = \"4 ft NAVD88\"\noccupancy",
        1,
    );
    scratch.write("site.toml", high);
    let result = scratch.site_json();
    assert_eq!(result["verdict"], "above");
    let said = text(&result, "wall-below-sill");
    assert!(
        said.contains("6.00 ft of water above the lowest ground, limit 3.00 ft"),
        "{said}"
    );
}

#[test]
fn salinity_that_nobody_states() {
    let scratch = Scratch::new();
    let how = |result: &Value| {
        let steps = result["trail"].as_array().unwrap();
        let quantity = "force at \"door\", water at the design level";
        let step = steps
            .iter()
            .find(|step| step["quantity"] == quantity)
            .unwrap();
        step["how"].as_str().unwrap().to_owned()
    };
    assert_eq!(
        how(&scratch.site_json()),
        "γ·h²/2, still water, taken as fresh because nobody states its salinity"
    );
    scratch.write(
        "site.toml",
        SITE.replace("[[opening]]", "[water]\nsalinity = \"salt\"\n[[opening]]"),
    );
    assert_eq!(how(&scratch.site_json()), "γ·h²/2, still salt water");
}

const DEM: [&str; 6] = [
    "site",
    "site.toml",
    "--zones",
    "zones.geojson",
    "--dem",
    "dem.tif",
];

#[test]
fn a_void_in_the_terrain() {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269+5703", |_, _| f32::NAN);
    let result = scratch.json(&DEM);
    assert_eq!(result["ground_m"], Value::Null);
    assert_eq!(result["verdict"], "protect");
    text(&result, "ground-unknown");
}

#[test]
fn ground_far_above_the_flood() {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269+5703", |_, _| 9.144);
    let result = scratch.json(&DEM);
    let said = text(&result, "ground-above-level");
    assert!(
        said.ends_with("(ground 30.00 ft NAVD88, flood level 9.00 ft NAVD88)"),
        "{said}"
    );
}

#[test]
fn a_layers_text_stays_on_its_line() {
    let scratch = Scratch::new();
    scratch.zones(&[zone(
        &json!({"FLD_ZONE": "X\nverdict: above\u{1b}[2J", "FLD_AR_ID": "Z\r1"}),
    )]);
    let page = scratch.answer(&DEM[..4]);
    assert!(
        page.chars().all(|each| each == '\n' || !each.is_control()),
        "{page:?}"
    );
    assert!(!page.contains("\nverdict"), "{page}");
}
