//! The published schema, and that results fit it.

use std::path::Path;
use std::sync::LazyLock;

use jsonschema::Validator;
use serde_json::{Value, json};

use super::scratch::Scratch;

fn published() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/schema/assessment-1.json");
    std::fs::read_to_string(path).unwrap()
}

static VALIDATOR: LazyLock<Validator> = LazyLock::new(|| {
    jsonschema::validator_for(&serde_json::from_str(&published()).unwrap()).unwrap()
});

/// Holds a result against the published schema.
pub(crate) fn check(result: &Value) {
    let faults: Vec<String> = VALIDATOR
        .iter_errors(result)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{}\n{result:#}", faults.join("\n"));
}

#[test]
fn the_published_schema_is_that_of_the_code() {
    assert_eq!(published(), sillmark::report::json_schema().unwrap());
}

#[test]
fn the_program_prints_it() {
    assert_eq!(
        Scratch::new().answer(&["catalog", "json-schema"]),
        published()
    );
}

#[test]
fn it_is_a_schema() {
    let schema: Value = serde_json::from_str(&published()).unwrap();
    assert!(jsonschema::meta::is_valid(&schema));
}

#[test]
fn it_refuses_what_is_not_a_result() {
    let result = Scratch::new().site_json();
    assert!(VALIDATOR.is_valid(&result));
    let broken = |way: &str, value: Value| {
        let mut result = result.clone();
        *result.pointer_mut(way).unwrap() = value;
        !VALIDATOR.is_valid(&result)
    };
    assert!(broken("/verdict", json!("safe")));
    assert!(broken("/openings/0/planks", json!(-1)));
    assert!(broken("/flood_level/source", json!("guessed")));
    assert!(broken("/datum", Value::Null));
    let mut misspelt = result.clone();
    misspelt["florr_m"] = json!(1.0);
    assert!(!VALIDATOR.is_valid(&misspelt));
    let mut short = result;
    short.as_object_mut().unwrap().remove("verdict");
    assert!(!VALIDATOR.is_valid(&short));
}
