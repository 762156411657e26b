//! Flowing water: which method, and what it refuses.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use proptest::prelude::*;
use sillmark::load::{
    DragCoefficient, DragRow, Flow, FlowLoad, FlowMethod, LEAST_HEAD_COEFFICIENT, LoadError,
    Salinity, velocity_head,
};
use sillmark::quantity::Pressure;
use sillmark::quantity::unit::{foot, pound_per_square_foot};
use sillmark::statement::Confidence;

use super::{feet, feet_per_second};

fn flow(velocity: f64, wall_width: Option<f64>) -> Flow {
    Flow {
        velocity: feet_per_second(velocity),
        ground: feet(-0.5),
        surface: feet(2.5),
        salinity: Salinity::Fresh,
        head_coefficient: LEAST_HEAD_COEFFICIENT,
        wall_width: wall_width.map(feet),
    }
}

fn found(velocity: f64, wall_width: Option<f64>) -> FlowLoad {
    flow(velocity, wall_width).load().unwrap()
}

#[test]
fn the_velocity_head_presses_evenly_over_the_wetted_height() {
    let load = found(8.0, None);
    assert!(matches!(load.method, FlowMethod::VelocityHead { .. }));
    let resultant = load.profile.resultant();
    assert_abs_diff_eq!(resultant.height.get::<foot>(), 1.0, epsilon = 1e-12);
    let below = load.profile.pressure_at(feet(-0.4));
    assert_relative_eq!(below.value, load.pressure.value);
    assert_eq!(load.profile.pressure_at(feet(2.6)), Pressure::default());
}

#[test]
fn ten_feet_a_second_is_still_a_head_and_a_little_more_is_drag() {
    assert!(matches!(
        found(10.0, None).method,
        FlowMethod::VelocityHead { .. }
    ));
    assert!(matches!(
        found(10.01, Some(30.0)).method,
        FlowMethod::Drag(_)
    ));
    // The two meet: a of 1.25 and the lowest drag coefficient of 1.25 are one formula.
    let (head, drag) = (found(10.0, None), found(10.000_001, Some(30.0)));
    assert_relative_eq!(
        head.pressure.value,
        drag.pressure.value,
        max_relative = 2e-3
    );
}

#[test]
fn drag_is_the_formula_over_the_wetted_area_at_mid_depth() {
    let load = found(12.0, Some(48.0)); // a ratio of 16
    assert_abs_diff_eq!(
        load.pressure.get::<pound_per_square_foot>(),
        1.30 * 1.94 * 144.0 / 2.0,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(
        load.profile.resultant().height.get::<foot>(),
        1.0,
        epsilon = 1e-12
    );
    let sure = |load: &FlowLoad| {
        load.references
            .iter()
            .all(|each| each.confidence == Confidence::Seen)
    };
    assert!(
        !sure(&load),
        "the table of drag coefficients is from memory"
    );
    assert!(sure(&found(5.0, None)));
}

/// No width of the table gives more than 2.00, so that a load without a width is safe.
#[test]
fn drag_without_a_width_has_the_greatest_coefficient() {
    let load = found(12.0, None);
    assert_abs_diff_eq!(
        load.pressure.get::<pound_per_square_foot>(),
        2.0 * 1.94 * 144.0 / 2.0,
        epsilon = 1e-9
    );
    let FlowMethod::Drag(drag) = load.method else {
        panic!("{:?}", load.method);
    };
    assert_eq!(drag.found, DragRow::WidthNotStated);
    let said = |each: &sillmark::statement::Citation| each.source.contains("not stated");
    assert!(load.references.iter().any(said), "{:?}", load.references);
    for width in [0.5, 3.0, 40.0, 100.0, 300.0, 1000.0] {
        assert!(
            found(12.0, Some(width)).pressure <= load.pressure,
            "{width}"
        );
    }
}

#[test]
fn a_coefficient_below_the_least_is_refused_and_quoted() {
    for coefficient in [1.249, 0.0, -1.25, f64::NAN, f64::INFINITY] {
        let slack = Flow {
            head_coefficient: coefficient,
            ..flow(5.0, None)
        };
        let message = slack.load().unwrap_err().to_string();
        assert!(message.contains(&format!("\"{coefficient}\"")), "{message}");
        assert!(
            message.ends_with("accepted: a number from 1.25 to 10"),
            "{message}"
        );
        assert!(velocity_head(feet_per_second(5.0), coefficient).is_err());
    }
    let fast = Flow {
        head_coefficient: 1.0,
        ..flow(12.0, Some(30.0))
    };
    assert!(fast.load().is_err());
}

#[test]
fn a_head_is_never_given_for_fast_water() {
    assert!(matches!(
        velocity_head(feet_per_second(10.01), 1.25),
        Err(LoadError::TooFastForHead(_))
    ));
}

#[test]
fn what_is_no_number_is_refused() {
    assert!(flow(-1.0, None).load().is_err());
    assert!(flow(f64::NAN, None).load().is_err());
    assert!(flow(12.0, Some(0.0)).load().is_err());
    assert!(
        Flow {
            surface: feet(f64::NAN),
            ..flow(5.0, None)
        }
        .load()
        .is_err()
    );
}

#[test]
fn no_water_over_the_ground_does_not_flow() {
    let buried = Flow {
        ground: feet(3.0),
        ..flow(5.0, None)
    };
    let load = buried.load().unwrap();
    assert_eq!(load.method, FlowMethod::NoWater);
    assert!(load.profile.is_empty());
}

/// FEMA P-55 (2011) vol. II table 8-2, from memory; between its bands the higher one.
#[test]
fn drag_coefficients_by_width_over_depth() {
    use DragRow::{BelowTable, BetweenBands, Within};
    for (ratio, value, row) in [
        (0.5, 2.00, BelowTable),
        (0.999, 2.00, BelowTable),
        (1.0, 1.25, Within),
        (12.0, 1.25, Within),
        (12.001, 1.30, BetweenBands),
        (12.999, 1.30, BetweenBands),
        (13.0, 1.30, Within),
        (20.0, 1.30, Within),
        (20.5, 1.40, BetweenBands),
        (21.0, 1.40, Within),
        (32.0, 1.40, Within),
        (32.5, 1.50, BetweenBands),
        (33.0, 1.50, Within),
        (40.0, 1.50, Within),
        (40.5, 1.75, BetweenBands),
        (41.0, 1.75, Within),
        (80.0, 1.75, Within),
        (80.5, 1.80, BetweenBands),
        (81.0, 1.80, Within),
        (120.0, 1.80, Within),
        (120.001, 2.00, Within),
        (1000.0, 2.00, Within),
    ] {
        // Several depths, so that binary rounding has its chance at the bands' ends.
        for depth in [0.1, 0.7, 1.0, 3.0, 3.3] {
            let drag = DragCoefficient::of(feet(ratio * depth), feet(depth));
            assert_abs_diff_eq!(drag.value, value, epsilon = 1e-12);
            assert_eq!(drag.found, row, "{ratio}");
            assert_relative_eq!(drag.ratio, ratio, max_relative = 1e-12);
        }
    }
}

proptest! {
    #[test]
    fn faster_water_presses_more(velocity in 0.0..25.0_f64, more in 0.1..5.0_f64, width in 3.0..400.0_f64) {
        prop_assert!(found(velocity + more, Some(width)).pressure > found(velocity, Some(width)).pressure);
    }

    #[test]
    fn a_wider_wall_drags_no_less(ratio in 1.0..200.0_f64, wider in 0.0..50.0_f64) {
        let drag = |ratio| DragCoefficient::of(feet(ratio), feet(1.0)).value;
        prop_assert!(drag(ratio + wider) >= drag(ratio));
    }
}
