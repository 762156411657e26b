//! Units are for reading: figures and verdicts do not depend on them.

use serde_json::Value;

use super::scratch::Scratch;

/// Every number and verdict of a JSON result, with the way to it.
fn figures(value: &Value, way: &str, found: &mut Vec<(String, String)>) {
    match value {
        Value::Object(members) => members
            .iter()
            .for_each(|(name, value)| figures(value, &format!("{way}/{name}"), found)),
        Value::Array(items) => items
            .iter()
            .enumerate()
            .for_each(|(index, value)| figures(value, &format!("{way}/{index}"), found)),
        Value::Number(number) => found.push((way.to_owned(), number.to_string())),
        Value::String(text) if way.ends_with("verdict") => {
            found.push((way.to_owned(), text.clone()));
        }
        _ => {}
    }
}

#[test]
fn both_systems_give_the_same_figures() {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269+5703", |column, row| {
        f32::from(u8::try_from(column + row).unwrap()) / 50.0
    });
    let of = |units| {
        let result = scratch.json(&[
            "site",
            "site.toml",
            "--zones",
            "zones.geojson",
            "--dem",
            "dem.tif",
            "--units",
            units,
        ]);
        let mut found = Vec::new();
        figures(&result, "", &mut found);
        found
    };
    let customary = of("us");
    assert!(customary.len() > 30, "{customary:?}");
    assert_eq!(customary, of("si"));
}

#[test]
fn a_threshold_in_metres_is_answered_in_metres() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "2.469 m NAVD88");
    let run = ["site", "site.toml", "--zones", "zones.geojson"];
    let page = scratch.answer(&run);
    assert!(
        page.contains("2.743 m NAVD88") && !page.contains(" ft "),
        "{page}"
    );
    let page = scratch.answer(&[&run[..], &["--units", "us"]].concat());
    assert!(
        page.contains("9.00 ft NAVD88") && !page.contains(" m "),
        "{page}"
    );
}
