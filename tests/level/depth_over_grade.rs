//! Depth zones over the highest adjacent grade.

use approx::assert_abs_diff_eq;
use sillmark::gis::AttributeValue;
use sillmark::hazard::{Role, Schema, Zone, ZoneStatement, interpret};
use sillmark::level::{GradeReach, HighestGrade, LevelSource, candidate_over};
use sillmark::quantity::unit::{Length, foot};
use sillmark::quantity::{AnnualChance, UnitSystem, parse_elevation};
use sillmark::risk::Deviation;
use sillmark::terrain::Grade;

fn sheet_flow(feature: &str, depth: f64) -> Zone {
    let schema = Schema::nfhl().unwrap();
    let statement = ZoneStatement::default();
    interpret(&schema, &statement, "zones", feature, |role| match role {
        Role::Zone => AttributeValue::Text("AO".to_owned()),
        Role::Depth => AttributeValue::Number(depth),
        Role::LengthUnit => AttributeValue::Text("Feet".to_owned()),
        _ => AttributeValue::Missing,
    })
}

fn terrain() -> HighestGrade {
    let grade = Grade {
        lowest: parse_elevation("98 ft NAVD88").unwrap(),
        highest: parse_elevation("100 ft NAVD88").unwrap(),
        samples: 40,
        without_value: 3,
        source: "dem.tif".into(),
    };
    let sd = Some(Length::new::<foot>(0.3));
    HighestGrade::of_terrain(&grade, GradeReach::Outline, sd, UnitSystem::Us)
}

#[test]
fn the_level_says_its_ground_and_adds_both_deviations() {
    let zone = sheet_flow("1", 1.0);
    let depth_sd = Deviation::known("depth-number").unwrap().unwrap().sd;
    let one = AnnualChance::ONE_PERCENT;
    let found = candidate_over([&zone], one, &terrain(), Some(depth_sd)).unwrap();
    assert_eq!(found.source, LevelSource::DepthOverGrade);
    assert_abs_diff_eq!(
        found.elevation.height().get::<foot>(),
        101.0,
        epsilon = 1e-9
    );
    // √(0.3² + 0.2887²).
    assert_abs_diff_eq!(found.sd.unwrap().get::<foot>(), 0.4163, epsilon = 1e-4);
    assert_eq!(
        found.how,
        "highest adjacent grade estimated as the highest of 40 points of the terrain along the building's outline (3 of them without a value) + the zone's depth number"
    );
    assert_eq!(
        found.reference,
        "44 CFR 60.3(c)(7); zones, feature 1; dem.tif"
    );
}

#[test]
fn two_feet_where_the_map_has_no_depth_and_no_deviation_of_a_rule() {
    let (shallow, without) = (sheet_flow("1", 1.0), sheet_flow("2", 0.0));
    let depth_sd = Some(Length::new::<foot>(0.29));
    let ask = |zones: &[&Zone]| {
        candidate_over(
            zones.iter().copied(),
            AnnualChance::ONE_PERCENT,
            &terrain(),
            depth_sd,
        )
        .unwrap()
    };
    let found = ask(&[&shallow, &without]);
    // The deeper of the two, though its depth is not written.
    assert_abs_diff_eq!(
        found.elevation.height().get::<foot>(),
        102.0,
        epsilon = 1e-9
    );
    assert_eq!(found.sd, None);
    assert!(
        found
            .how
            .ends_with("+ 2 ft, because the zone has no depth number")
    );
    let deep = sheet_flow("3", 3.0);
    assert_abs_diff_eq!(
        ask(&[&shallow, &deep, &without])
            .elevation
            .height()
            .get::<foot>(),
        103.0,
        epsilon = 1e-9
    );
}

#[test]
fn another_event_is_not_answered() {
    let zone = sheet_flow("1", 1.0);
    assert_eq!(
        candidate_over([&zone], AnnualChance::ONE_IN_500, &terrain(), None),
        None
    );
}
