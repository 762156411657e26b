//! The published schemas, and that results fit them.

use std::path::Path;
use std::sync::LazyLock;

use jsonschema::Validator;
use serde_json::{Value, json};

use super::portfolio::{HEADER, ROWS, alder_lock};
use super::scratch::Scratch;

/// A schema as the project publishes it.
fn published(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/schema");
    std::fs::read_to_string(folder.join(name)).unwrap()
}

fn validator(name: &str) -> Validator {
    jsonschema::validator_for(&serde_json::from_str(&published(name)).unwrap()).unwrap()
}

const SITE: &str = "assessment-1.json";
const BARRIER: &str = "barrier-1.json";
const SUMMARY: &str = "portfolio-summary-1.json";
const REVIEW: &str = "review-1.json";

static VALIDATOR: LazyLock<Validator> = LazyLock::new(|| validator(SITE));
static BARRIER_VALIDATOR: LazyLock<Validator> = LazyLock::new(|| validator(BARRIER));
static SUMMARY_VALIDATOR: LazyLock<Validator> = LazyLock::new(|| validator(SUMMARY));
static REVIEW_VALIDATOR: LazyLock<Validator> = LazyLock::new(|| validator(REVIEW));

/// Holds a result of `site` against its published schema.
pub(crate) fn check(result: &Value) {
    check_by(&VALIDATOR, result);
}

/// Holds a result of `barrier` against its published schema.
pub(crate) fn check_barrier(result: &Value) {
    check_by(&BARRIER_VALIDATOR, result);
}

/// Holds a result of `review` against its published schema.
pub(crate) fn check_review(result: &Value) {
    check_by(&REVIEW_VALIDATOR, result);
}

fn check_by(validator: &Validator, result: &Value) {
    let faults: Vec<String> = validator
        .iter_errors(result)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{}\n{result:#}", faults.join("\n"));
}

#[test]
fn the_published_schemas_are_those_of_the_code() {
    assert_eq!(published(SITE), sillmark::report::json_schema().unwrap());
    assert_eq!(
        published(BARRIER),
        sillmark::report::barrier_json_schema().unwrap()
    );
    assert_eq!(
        published(SUMMARY),
        sillmark::report::portfolio::portfolio_summary_schema().unwrap()
    );
    assert_eq!(
        published(REVIEW),
        sillmark::report::review::review_schema().unwrap()
    );
}

#[test]
fn the_program_prints_them() {
    let scratch = Scratch::new();
    let printed = |list| scratch.answer(&["catalog", list]);
    assert_eq!(printed("json-schema"), published(SITE));
    assert_eq!(printed("barrier-schema"), published(BARRIER));
    assert_eq!(printed("summary-schema"), published(SUMMARY));
    assert_eq!(printed("review-schema"), published(REVIEW));
}

#[test]
fn they_are_schemas() {
    for name in [SITE, BARRIER, SUMMARY, REVIEW] {
        let schema: Value = serde_json::from_str(&published(name)).unwrap();
        assert!(jsonschema::meta::is_valid(&schema), "{name}");
    }
}

/// Every object of a barrier is closed, so that a field that is renamed or mistyped is found.
#[test]
fn the_schema_of_a_barrier_refuses_what_is_not_a_result() {
    let result = Scratch::new().barrier_json(&["--width", "14 ft", "--depth", "4 ft"]);
    let broken = |way: &str, value: Value| {
        let mut result = result.clone();
        *result.pointer_mut(way).unwrap() = value;
        assert!(!BARRIER_VALIDATOR.is_valid(&result), "{way}");
    };
    broken("/verdict", json!("safe"));
    broken("/width_m", json!("14 ft"));
    broken("/barrier/loads/0/case", json!("ebb"));
    broken("/barrier/posts/0/brace/along_n", Value::Null);
    broken("/behind/fitting/in_time", json!("soon"));
    broken("/barrier/legs/0/spans/0", json!({"clear_m": 1.0}));
    for way in ["", "/barrier", "/barrier/checks/0", "/behind/pump"] {
        let mut more = result.clone();
        more.pointer_mut(way).unwrap()["florr_m"] = json!(1.0);
        assert!(!BARRIER_VALIDATOR.is_valid(&more), "{way}");
    }
    let mut short = result;
    short.as_object_mut().unwrap().remove("reasons");
    assert!(!BARRIER_VALIDATOR.is_valid(&short));
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

#[test]
fn the_schema_of_a_summary_holds_a_summary_and_refuses_what_is_none() {
    let scratch = alder_lock();
    let bad = "bad,x,47.8,612.9,ft,NAVD88\n";
    scratch.write("t.csv", format!("{HEADER}{ROWS}{bad}"));
    let options = ["--summary", "s.json"];
    assert_eq!(scratch.run_portfolio("t.csv", &options).status, 0);
    let result: Value = serde_json::from_str(&scratch.read("s.json")).unwrap();
    check_by(&SUMMARY_VALIDATOR, &result);
    let broken = |way: &str, value: Value| {
        let mut result = result.clone();
        *result.pointer_mut(way).unwrap() = value;
        assert!(!SUMMARY_VALIDATOR.is_valid(&result), "{way}");
    };
    broken("/rows_read", json!(-1));
    broken("/verdicts/protect", json!("one"));
    broken("/highest_needs/0/verdict", json!("safe"));
    broken("/reasons/0/code", Value::Null);
    broken("/rejects/0", json!({"rows": 1}));
    for way in ["", "/run", "/verdicts", "/zones/0", "/map"] {
        let mut more = result.clone();
        more.pointer_mut(way).unwrap()["rwos"] = json!(1);
        assert!(!SUMMARY_VALIDATOR.is_valid(&more), "{way}");
    }
}

#[test]
fn the_schema_of_a_review_holds_a_review_and_refuses_what_is_none() {
    let scratch = Scratch::new();
    scratch.write(
        "offer.toml",
        "freeboard = \"0 ft\"\nflood_level = \"7.0 ft NAVD88\"\n[[opening]]\nid = \"dor\"",
    );
    let run = [
        "review",
        "offer.toml",
        "site.toml",
        "--zones",
        "zones.geojson",
    ];
    let text = scratch.answer(&[&run[..], &["--format", "json"]].concat());
    let result: Value = serde_json::from_str(&text).unwrap();
    check_review(&result);
    let broken = |way: &str, value: Value| {
        let mut result = result.clone();
        *result.pointer_mut(way).unwrap() = value;
        assert!(!REVIEW_VALIDATOR.is_valid(&result), "{way}");
    };
    broken("/worst", json!("fine"));
    broken("/counts/holds", json!(-1));
    broken("/points/1/outcome", json!("fails"));
    broken("/points/1/tolerance/parts/0/of", Value::Null);
    for way in ["", "/proposal", "/points/0", "/points/1/tolerance"] {
        let mut more = result.clone();
        more.pointer_mut(way).unwrap()["poitns"] = json!(1);
        assert!(!REVIEW_VALIDATOR.is_valid(&more), "{way}");
    }
}
