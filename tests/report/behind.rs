//! What stands behind barriers: pump, filling, fitting.

use serde_json::Value;
use sillmark::barrier::{BarrierAnswer, BehindBarriers};
use sillmark::quantity::UnitSystem;
use sillmark::quantity::unit::{
    Area, Time, Velocity, hour, inch, meter_per_second, minute, square_foot,
};
use sillmark::report::{JsonBehind, behind_lines, behind_tasks};
use sillmark::site::{FittingStatement, InsideStatement};

use super::fixture::{self, inches};

fn inside() -> InsideStatement {
    let inch_an_hour = inches(1.0).get::<inch>() * 0.0254 / 3600.0;
    InsideStatement {
        floor_area: Some(Area::new::<square_foot>(400.0)),
        greatest_depth: Some(inches(2.0)),
        rain: Some(Velocity::new::<meter_per_second>(inch_an_hour)),
        rain_area: Some(Area::new::<square_foot>(100.0)),
        runoff: None,
        pump_margin: Some(1.5),
    }
}

fn fitting() -> FittingStatement {
    FittingStatement {
        time_a_plank: Some(Time::new::<minute>(2.0)),
        time_a_post: Some(Time::new::<minute>(10.0)),
        parties: Some(1),
        lift: None,
    }
}

fn behind(
    barriers: &[&BarrierAnswer],
    inside: &InsideStatement,
    fitting: &FittingStatement,
    warning_hours: Option<f64>,
) -> BehindBarriers {
    let warning = warning_hours.map(Time::new::<hour>);
    BehindBarriers::of(barriers, inside, fitting, warning)
        .unwrap()
        .unwrap()
}

/// What is known, and below it what is still to be stated.
fn lines(behind: &BehindBarriers, units: UnitSystem) -> String {
    let known = behind_lines(behind, units).join("\n");
    let tasks = behind_tasks(behind, units).join("\n");
    format!("{known}\n\n{tasks}")
}

fn told(behind: &BehindBarriers) -> Value {
    let told = serde_json::to_value(JsonBehind::of(behind)).unwrap();
    let schema = serde_json::to_value(schemars::schema_for!(JsonBehind)).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let faults: Vec<String> = validator
        .iter_errors(&told)
        .map(|fault| fault.to_string())
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    told
}

#[test]
fn two_barriers_in_both_systems() {
    let (door, gate) = (fixture::door(), fixture::gate());
    let behind = behind(&[&door, &gate], &inside(), &fitting(), Some(20.0));
    for (units, name) in [(UnitSystem::Us, "us"), (UnitSystem::Si, "si")] {
        insta::assert_snapshot!(format!("behind_{name}"), lines(&behind, units));
    }
    let told = told(&behind);
    insta::assert_snapshot!("behind_json", serde_json::to_string_pretty(&told).unwrap());
    // Rain of 1 in an hour on 100 ft² is 100/12/3600 ft³/s; the seals leak half a gallon an
    // hour on each wetted foot, 3 + 2 × 2.1 ft of the door and 14 + 2 × 3 ft of the gate.
    let rain = 100.0 / 12.0 / 3600.0 * 0.3048_f64.powi(3);
    let leaks = 0.5 * (7.2 + 20.0) * 0.003_785_411_784 / 3600.0;
    let capacity = told["pump"]["capacity_m3_per_s"].as_f64().unwrap();
    assert!((capacity - 1.5 * (rain + leaks)).abs() < 1e-9, "{capacity}");
}

#[test]
fn what_nobody_stated_is_no_number() {
    let door = fixture::unmeasured_door();
    let nothing = InsideStatement::default();
    let behind = behind(&[&door], &nothing, &FittingStatement::default(), None);
    insta::assert_snapshot!("behind_not_stated", lines(&behind, UnitSystem::Us));
    let told = told(&behind);
    assert_eq!(told["filling"], Value::Null);
    assert_eq!(told["impermeable"], Value::Null);
    assert_eq!(told["pump"]["at_least"], true);
    assert_eq!(told["fitting"]["in_time"], "not-stated");
    assert_eq!(told["fitting"]["minutes"], Value::Null);
}

#[test]
fn the_same_gap_in_knowledge_is_told_once() {
    let door = fixture::unmeasured_door();
    let one = behind(&[&door], &inside(), &fitting(), None);
    let two = behind(&[&door, &door], &inside(), &fitting(), None);
    let pump = |behind| {
        let lines = behind_lines(behind, UnitSystem::Us);
        let found = lines
            .into_iter()
            .find(|line| line.contains("a pump has to carry"));
        found.unwrap()
    };
    for behind in [&one, &two] {
        let line = pump(behind);
        assert!(
            line.ends_with("not in it: the water through the seals"),
            "{line}"
        );
    }
}

#[test]
fn fitting_held_against_the_warning() {
    // The door: five planks of 2 min.
    let door = fixture::door();
    let line = |warning| {
        let behind = behind(&[&door], &inside(), &fitting(), warning);
        behind_lines(&behind, UnitSystem::Us).pop().unwrap()
    };
    assert_eq!(
        line(Some(24.0)),
        "fitting takes 10 min, done 23 h 50 min before the water"
    );
    assert_eq!(
        line(Some(0.1)),
        "fitting takes 10 min, 4 min longer than the warning"
    );
    assert_eq!(
        line(Some(2.0)),
        "fitting takes 10 min, done 1 h 50 min before the water, but the warning is 10 h short of \
         the 12 h that the rule for such closures asks for"
    );
    assert_eq!(line(None), "fitting takes 10 min");
    let tasks = |warning| {
        let behind = behind(&[&door], &inside(), &fitting(), warning);
        behind_tasks(&behind, UnitSystem::Us).join("\n")
    };
    assert!(tasks(None).contains("state the time between the warning and the water"));
    assert!(!tasks(Some(2.0)).contains("warning"));
    let told = told(&behind(&[&door], &inside(), &fitting(), Some(2.0)));
    assert_eq!(told["fitting"]["in_time"], "twelve-hour-rule");
    assert_eq!(told["fitting"]["wanting_minutes"], 600.0);
}
