//! The flood level: who decides, and what is refused.

mod boundary;
mod depth_over_grade;
mod rasters;

use approx::assert_abs_diff_eq;
use sillmark::crs::{DatumSettings, Datums};
use sillmark::design::{FloodEvent, StatedLevel};
use sillmark::gis::AttributeValue;
use sillmark::hazard::{Role, Schema, Zone, ZoneStatement, interpret};
use sillmark::level::{LevelAnswer, LevelSource, MapLevels, Question, flood_level, rounding_sd};
use sillmark::quantity::unit::foot;
use sillmark::quantity::{AnnualChance, LengthUnit, VerticalDatum, parse_elevation};
use sillmark::site::Location;

fn zone(code: &str, level: f64, datum: &str) -> Zone {
    interpret(
        &Schema::nfhl().unwrap(),
        &ZoneStatement::default(),
        "zones",
        code,
        |role| match role {
            Role::Zone => AttributeValue::Text(code.to_owned()),
            Role::Level => AttributeValue::Number(level),
            Role::LengthUnit => AttributeValue::Text("Feet".to_owned()),
            Role::LevelDatum => AttributeValue::Text(datum.to_owned()),
            _ => AttributeValue::Missing,
        },
    )
}

fn stated(level: &str) -> [StatedLevel; 1] {
    [StatedLevel {
        event: FloodEvent::Chance(AnnualChance::ONE_PERCENT),
        elevation: parse_elevation(level).unwrap(),
        sd: None,
        source: "study".to_owned(),
    }]
}

fn ask(stated: &[StatedLevel], zones: &[&Zone]) -> LevelAnswer {
    let question = Question {
        location: Location::from_degrees(-74.0335, 40.74).unwrap(),
        event: AnnualChance::ONE_PERCENT,
        datum: VerticalDatum::Navd88,
        datums: &Datums::new(DatumSettings::default()).unwrap(),
        stated,
        zones,
        highest_grade: None,
        depth_sd: None,
        level_sd: &|_| None,
        words: true,
    };
    flood_level(&question, MapLevels::default())
}

fn feet(answer: &LevelAnswer) -> f64 {
    answer
        .level
        .as_ref()
        .unwrap()
        .decided
        .elevation
        .height()
        .get::<foot>()
}

#[test]
fn the_study_decides_and_the_zone_is_listed() {
    let zone = zone("AE", 9.0, "NAVD88");
    let answer = ask(&stated("9.4 ft NAVD88"), &[&zone]);
    assert_abs_diff_eq!(feet(&answer), 9.4, epsilon = 1e-9);
    let level = answer.level.unwrap();
    assert_eq!(level.decided.source, LevelSource::Stated);
    assert_eq!(level.others[0].source, LevelSource::ZoneStatic);
}

#[test]
fn a_difference_beyond_the_rounding_is_noticed() {
    let zone = zone("AE", 9.0, "NAVD88");
    let within = ask(&stated("9.4 ft NAVD88"), &[&zone]).level.unwrap();
    assert!(
        within.disagreement().is_none(),
        "whole feet: 0.4 ft is within two standard deviations of 0.29 ft"
    );
    let beyond = ask(&stated("10.4 ft NAVD88"), &[&zone]).level.unwrap();
    let (other, difference) = beyond.disagreement().unwrap();
    assert_eq!(other.source, LevelSource::ZoneStatic);
    assert_abs_diff_eq!(difference.get::<foot>(), 1.4, epsilon = 1e-9);
}

#[test]
fn where_zones_meet_the_higher_level_counts() {
    let (low, high) = (zone("AE", 9.0, "NAVD88"), zone("AH", 11.0, "NAVD88"));
    assert_abs_diff_eq!(feet(&ask(&[], &[&low, &high])), 11.0, epsilon = 1e-9);
}

#[test]
fn a_level_on_another_datum_is_refused_and_never_shifted_by_nothing() {
    let zone = zone("AE", 9.0, "NGVD29");
    let answer = ask(&[], &[&zone]);
    assert!(answer.level.is_none());
    assert_eq!(
        answer.refused[0].candidate.elevation.datum(),
        VerticalDatum::Ngvd29
    );
}

#[test]
fn a_level_of_a_zone_outside_the_flood_is_not_one() {
    let zone = zone("X", 9.0, "NAVD88");
    assert_eq!(ask(&[], &[&zone]), LevelAnswer::default());
}

/// A printed level lies within half a unit of its last digit (FEMA course IS-273, step 5): a
/// uniform distribution as wide as the unit, whose standard deviation is width / √12.
#[test]
fn rounding_follows_the_last_digit_in_its_own_unit() {
    let sd = |level: &str, unit| rounding_sd(parse_elevation(level).unwrap(), unit).get::<foot>();
    assert_abs_diff_eq!(
        sd("9 ft NAVD88", LengthUnit::Foot),
        1.0 / 12.0_f64.sqrt(),
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(
        sd("9.3 ft NAVD88", LengthUnit::Foot),
        0.1 / 12.0_f64.sqrt(),
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(
        sd("3 m NAVD88", LengthUnit::Metre),
        1.0 / 0.3048 / 12.0_f64.sqrt(),
        epsilon = 1e-9
    );
}
