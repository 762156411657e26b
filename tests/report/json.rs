//! A barrier as JSON: what it holds, and that it fits its schema.

use jsonschema::Validator;
use serde_json::{Value, json};
use sillmark::barrier::{BarrierAnswer, LoadCase};
use sillmark::quantity::UnitSystem;
use sillmark::quantity::unit::Force;
use sillmark::report::JsonBarrier;

use super::fixture;

fn told(answer: &BarrierAnswer) -> Value {
    serde_json::to_value(JsonBarrier::of(answer, UnitSystem::Us)).unwrap()
}

fn validator() -> Validator {
    let schema = schemars::schema_for!(JsonBarrier);
    jsonschema::validator_for(&serde_json::to_value(schema).unwrap()).unwrap()
}

fn near(value: &Value, expected: f64) {
    let value = value.as_f64().unwrap();
    assert!((value - expected).abs() < 1e-6, "{value} for {expected}");
}

#[test]
fn every_barrier_fits_the_schema() {
    let validator = validator();
    for (name, answer) in fixture::all() {
        let told = told(&answer);
        let faults: Vec<String> = validator
            .iter_errors(&told)
            .map(|fault| format!("{}: {fault}", fault.instance_path()))
            .collect();
        assert!(faults.is_empty(), "{name}: {}", faults.join("\n"));
        let text = serde_json::to_string(&JsonBarrier::of(&answer, UnitSystem::Us)).unwrap();
        assert_eq!(serde_json::from_str::<Value>(&text).unwrap(), told);
    }
}

#[test]
fn the_schema_refuses_what_is_no_barrier() {
    let validator = validator();
    let told = told(&fixture::around_steps());
    let broken = |way: &str, value: Value| {
        let mut told = told.clone();
        *told.pointer_mut(way).unwrap() = value;
        !validator.is_valid(&told)
    };
    assert!(broken("/mount", json!("beside")));
    assert!(broken("/planks/count", json!(-1)));
    assert!(broken("/loads/0/case", json!("worst")));
    assert!(broken("/checks/0/holds", json!("yes")));
    assert!(broken("/anchors/0/check/outcome", json!("safe")));
    assert!(broken("/inflow/parts/0/way", json!("door")));
    let mut more = told.clone();
    more["posts"][0]["colour"] = json!("grey");
    assert!(!validator.is_valid(&more));
    let mut less = told;
    less.as_object_mut().unwrap().remove("handling");
    assert!(!validator.is_valid(&less));
}

#[test]
fn figures_of_the_door() {
    let told = told(&fixture::door());
    assert_eq!(told["mount"], "inside");
    assert_eq!(told["planks"]["count"], 5);
    near(&told["planks"]["cover_m"], 0.1524);
    near(&told["planks"]["cut_m"][0], 35.0 * 0.0254);
    near(&told["barrier_height_m"], 0.762);
    let span = &told["legs"][0]["spans"][0];
    near(&span["clear_m"], 32.0 * 0.0254);
    near(&span["bearing_m"], 33.5 * 0.0254);
    // Half of 62.4 lb/ft³ × (2.5 ft)² on each foot of width.
    let top = &told["loads"][1];
    assert_eq!(top["case"], "top-of-barrier");
    let pound_a_foot = 4.448_221_615_260_5 / 0.3048;
    near(&top["force_n_per_m"], 195.0 * pound_a_foot);
    near(&top["height_m"], 2.5 * 0.3048 / 3.0);
    // On the lowest plank (156 + 124.8) / 2 lb/ft² × 0.5 ft.
    near(&top["planks"][0]["force_n_per_m"], 70.2 * pound_a_foot);
    near(&top["planks"][4]["to_m"], 0.762);
    assert_eq!(told["corner_posts"], 0);
    assert_eq!(told["end_post"]["anchors"]["check"], Value::Null);
}

#[test]
fn strips_of_planks_add_up_to_the_load() {
    for (name, answer) in fixture::all() {
        let told = told(&answer);
        for load in told["loads"].as_array().unwrap() {
            if load["impact"] != Value::Null {
                continue;
            }
            let planks = load["planks"].as_array().unwrap().iter();
            let sum: f64 = planks
                .map(|plank| plank["force_n_per_m"].as_f64().unwrap())
                .sum();
            let parts = load["parts"].as_array().unwrap().iter();
            let parts: f64 = parts
                .map(|part| part["force_n_per_m"].as_f64().unwrap())
                .sum();
            let whole = load["force_n_per_m"].as_f64().unwrap();
            assert!((sum - whole).abs() < 1e-4, "{name}: {sum} of {whole}");
            assert!((parts - whole).abs() < 1e-4, "{name}: {parts} of {whole}");
        }
    }
}

#[test]
fn a_brace_has_its_side_and_its_limit() {
    let told = told(&fixture::waves());
    let brace = &told["posts"][0]["brace"];
    assert_eq!(brace["side"], "dry-side");
    near(&brace["capacity_n"], 3000.0 * 4.448_221_615_260_5);
    let (along, horizontal) = (&brace["along_n"], &brace["horizontal_n"]);
    let vertical = brace["vertical_n"].as_f64().unwrap();
    let along_by_parts = horizontal.as_f64().unwrap().hypot(vertical);
    assert!((along.as_f64().unwrap() - along_by_parts).abs() < 1e-3);
}

#[test]
fn small_leaks_keep_their_digits() {
    let answer = fixture::door();
    let exact = answer.inflow.total().value;
    let told = told(&answer);
    let total = told["inflow"]["total_m3_per_s"].as_f64().unwrap();
    assert!(exact > 0.0 && (total / exact - 1.0).abs() < 1e-3, "{total}");
}

#[test]
fn sentences_are_in_the_units_of_the_run() {
    let answer = fixture::too_high();
    let reasons = |units| {
        let told = serde_json::to_value(JsonBarrier::of(&answer, units)).unwrap();
        told["shortfalls"][0].as_str().unwrap().to_owned()
    };
    assert!(reasons(UnitSystem::Us).contains(" ft"));
    assert!(reasons(UnitSystem::Si).contains(" m "));
}

#[test]
fn anchors_are_told_in_the_case_that_asks_most_of_them() {
    // Under the braced post the moment is greater at the design level, but the brace lifts the
    // plate more at the top: T = M/s + P/2, twice for the load factor, on a row of two.
    let told = told(&fixture::waves());
    let plate = &told["anchors"][0];
    let number = |value: &Value| value.as_f64().unwrap();
    let tensions: Vec<f64> = told["posts"][0]["base"]
        .as_array()
        .unwrap()
        .iter()
        .map(|base| number(&base["moment_nm"]) / (11.0 * 0.0254) + number(&base["uplift_n"]) / 2.0)
        .collect();
    assert!(tensions[1] > tensions[0]);
    assert_eq!(plate["forces"]["case"], "top-of-barrier");
    let on_anchor = number(&plate["tension_on_anchor_n"]);
    assert!(
        (on_anchor - 2.0 * tensions[1] / 2.0).abs() < 1e-3,
        "{on_anchor}"
    );
}

#[test]
fn planks_name_their_leg() {
    let told = told(&fixture::around_steps());
    let legs = |wanted: &str| -> Vec<Option<u64>> {
        let checks = told["checks"].as_array().unwrap().iter();
        checks
            .filter(|check| check["part"] == wanted && check["what"] == "shear")
            .map(|check| check["leg"].as_u64())
            .collect()
    };
    let each_twice = [Some(1), Some(1), Some(2), Some(2), Some(3), Some(3)];
    assert_eq!(legs("plank 1"), each_twice);
    assert_eq!(legs("corner post"), [None, None]);
    // The longest of the three legs.
    assert_eq!(told["governing"]["leg"], 2);
}

#[test]
fn what_has_no_capacity_is_null_and_not_infinite() {
    let mut answer = fixture::door();
    let check = &mut answer.design.legs[0].checks[0];
    check.capacity = sillmark::barrier::Amount::Force(Force::default());
    assert_eq!(check.case, LoadCase::DesignLevel);
    let told = told(&answer);
    assert_eq!(told["checks"][0]["ratio"], Value::Null);
    assert_eq!(told["governing"]["ratio"], Value::Null);
    assert!(validator().is_valid(&told));
}

#[test]
fn the_whole_of_two_barriers() {
    for (name, answer) in [("door", fixture::door()), ("waves", fixture::waves())] {
        let text = serde_json::to_string_pretty(&JsonBarrier::of(&answer, UnitSystem::Us)).unwrap();
        insta::assert_snapshot!(format!("json_{name}"), text);
    }
}
