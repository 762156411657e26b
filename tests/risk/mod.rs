//! Curves of stage and chance; hazard of the water for people.

mod hazard_rating;

use approx::assert_abs_diff_eq;
use sillmark::quantity::unit::{Length, foot};
use sillmark::quantity::{AnnualChance, VerticalDatum, parse_annual_chance, parse_elevation};
use sillmark::risk::{
    Beyond, ChanceAtLevel, ChanceLevel, INTERPOLATION, StageChance, StageChanceError,
};

fn chance(text: &str) -> AnnualChance {
    parse_annual_chance(text).unwrap()
}

fn level(of: &str, elevation: &str) -> ChanceLevel {
    ChanceLevel {
        chance: chance(of),
        elevation: parse_elevation(elevation).unwrap(),
        sd: None,
    }
}

fn curve(levels: &[(&str, &str)]) -> Result<StageChance, StageChanceError> {
    StageChance::new(levels.iter().map(|(of, elevation)| level(of, elevation)))
}

/// Four floods, out of order.
fn four() -> StageChance {
    curve(&[
        ("1%", "104.5 ft NAVD88"),
        ("10%", "100.0 ft NAVD88"),
        ("0.2%", "106.8 ft NAVD88"),
        ("2%", "103.2 ft NAVD88"),
    ])
    .unwrap()
}

fn at(curve: &StageChance, elevation: &str) -> ChanceAtLevel {
    curve
        .chance_at(parse_elevation(elevation).unwrap())
        .unwrap()
}

#[test]
fn chance_and_level_are_each_others_inverse() {
    let curve = four();
    for percent in [
        "9%", "5%", "2%", "1.7%", "1%", "0.9%", "0.5%", "0.21%", "0.2%",
    ] {
        let level = curve.level_at(chance(percent)).unwrap();
        let ChanceAtLevel::Known { chance: back, .. } = curve.chance_at(level.elevation).unwrap()
        else {
            panic!("{percent}");
        };
        assert_abs_diff_eq!(
            back.probability(),
            chance(percent).probability(),
            epsilon = 1e-12
        );
    }
}

#[test]
fn a_given_level_comes_back_untouched_and_says_so() {
    let curve = four();
    let found = curve.level_at(chance("1 in 50")).unwrap();
    assert_eq!(found.elevation, parse_elevation("103.2 ft NAVD88").unwrap());
    assert_eq!(found.from.to_string(), "given for 2 %");
    let between = curve.level_at(chance("1.5%")).unwrap();
    let expected = format!("between 2 % and 1 % by {INTERPOLATION}");
    assert_eq!(between.from.to_string(), expected);
}

#[test]
fn nothing_is_extrapolated() {
    let curve = four();
    assert_eq!(
        curve.level_at(chance("0.1%")),
        Err(Beyond::Rarer(chance("0.2%")))
    );
    assert_eq!(
        curve.level_at(chance("20%")),
        Err(Beyond::MoreFrequent(chance("10%")))
    );
    assert_eq!(
        at(&curve, "106.9 ft NAVD88").to_string(),
        "rarer than 0.2 %"
    );
    assert_eq!(
        at(&curve, "99.9 ft NAVD88").to_string(),
        "more frequent than 10 %"
    );
    assert_eq!(at(&curve, "106.8 ft NAVD88").to_string(), "0.2 %");
    assert_eq!(at(&curve, "100 ft NAVD88").to_string(), "10 %");
}

#[test]
fn a_lone_level_answers_for_itself_alone() {
    let curve = curve(&[("1%", "9 ft NAVD88")]).unwrap();
    assert!(curve.level_at(chance("1%")).is_ok());
    assert!(curve.level_at(chance("2%")).is_err());
    assert_eq!(at(&curve, "9 ft NAVD88").to_string(), "1 %");
    assert_eq!(at(&curve, "9.1 ft NAVD88").to_string(), "rarer than 1 %");
    assert_eq!(
        at(&curve, "8.9 ft NAVD88").to_string(),
        "more frequent than 1 %"
    );
}

#[test]
fn equal_levels_are_reached_by_the_most_frequent_of_them() {
    let curve = curve(&[
        ("10%", "8 ft NAVD88"),
        ("2%", "9 ft NAVD88"),
        ("1%", "9 ft NAVD88"),
        ("0.2%", "10 ft NAVD88"),
    ])
    .unwrap();
    assert_eq!(at(&curve, "9 ft NAVD88").to_string(), "2 %");
    let flat = curve.level_at(chance("1.4%")).unwrap();
    assert_abs_diff_eq!(flat.elevation.height().get::<foot>(), 9.0, epsilon = 1e-9);
    let ChanceAtLevel::Known { chance: above, .. } = at(&curve, "9.001 ft NAVD88") else {
        panic!();
    };
    assert!(above.probability() < 0.01 && above.probability() > 0.0099);
}

#[test]
fn levels_that_make_no_curve_are_refused() {
    assert_eq!(curve(&[]), Err(StageChanceError::Empty));
    let error = |levels: &[(&str, &str)]| curve(levels).unwrap_err().to_string();
    assert_eq!(
        error(&[
            ("1%", "9.1 ft NAVD88"),
            ("0.2%", "9.0 ft NAVD88"),
            ("10%", "8 ft NAVD88")
        ]),
        "the 0.2 % annual chance level lies 0.030 m below the 1 % one; accepted: a rarer flood at least as high as a more frequent one"
    );
    assert_eq!(
        error(&[("1%", "9 ft NAVD88"), ("1 in 100", "9.2 ft NAVD88")]),
        "the 1 % annual chance flood has two levels; accepted: one level for each chance"
    );
    let datums = error(&[("1%", "9 ft NAVD88"), ("0.2%", "10 ft NGVD29")]);
    assert!(datums.contains("different vertical datums"), "{datums}");
    let tidal = ChanceLevel {
        elevation: sillmark::quantity::Elevation::new(
            Length::new::<foot>(9.0),
            VerticalDatum::LocalTidal,
        ),
        ..level("1%", "9 ft NAVD88")
    };
    assert!(matches!(
        StageChance::new([tidal]),
        Err(StageChanceError::Datums(_))
    ));
    let other = parse_elevation("9 ft NGVD29").unwrap();
    assert!(four().chance_at(other).is_err());
}

#[test]
fn the_deviation_lies_between_those_of_the_neighbours() {
    let with = |of, elevation, feet: Option<f64>| ChanceLevel {
        sd: feet.map(Length::new::<foot>),
        ..level(of, elevation)
    };
    let both = StageChance::new([
        with("10%", "100 ft NAVD88", Some(0.2)),
        with("2%", "103.2 ft NAVD88", Some(0.6)),
    ]);
    let sd = both.unwrap().level_at(chance("4%")).unwrap().sd.unwrap();
    // The share of the rarer level is (1.7507 − 1.2816) / (2.0537 − 1.2816) = 0.6076.
    assert_abs_diff_eq!(sd.get::<foot>(), 0.2 + 0.6076 * 0.4, epsilon = 1e-4);
    let one = StageChance::new([
        with("10%", "100 ft NAVD88", None),
        with("2%", "103.2 ft NAVD88", Some(0.6)),
    ]);
    assert_eq!(one.unwrap().level_at(chance("4%")).unwrap().sd, None);
}
