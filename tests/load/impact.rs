//! Debris.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use proptest::prelude::*;
use sillmark::load::{
    CommentaryImpact, DebrisZone, GuidanceImpact, Impact, ImpactMethod, PressureProfile,
    RiskCategory, StoppedObject, StruckStructure, blockage_coefficient, debris_depth_coefficient,
    importance_coefficient, object_weight, response_ratio,
};
use sillmark::quantity::unit::{
    Force, Time, foot, in_pounds_per_foot, pound_force, pound_per_square_foot, second,
};
use sillmark::statement::{Choice, Confidence};

use super::{feet, feet_per_second};

fn seconds(number: f64) -> Time {
    Time::new::<second>(number)
}

proptest! {
    #[test]
    fn a_patch_carries_its_force(force in 1.0..10_000.0_f64, lowest in -1.0..5.0_f64) {
        let impact = Impact::on_a_square_foot(Force::new::<pound_force>(force));
        let profile = PressureProfile::band(impact.band(feet(lowest)));
        let whole = profile.resultant().force * impact.width().unwrap();
        assert_relative_eq!(whole.get::<pound_force>(), force, max_relative = 1e-9);
        assert_abs_diff_eq!(profile.resultant().height.get::<foot>(), lowest + 0.5, epsilon = 1e-9);
    }

    #[test]
    fn longer_stops_are_softer(velocity in 0.1..20.0_f64, time in 0.01..1.0_f64, longer in 0.01..1.0_f64) {
        let force = |time| {
            let object = StoppedObject { time: seconds(time), ..StoppedObject::default() };
            object.force(feet_per_second(velocity)).unwrap()
        };
        prop_assert!(force(time + longer) < force(time));
    }

    #[test]
    fn coefficients_stay_between_nothing_and_one(length in 0.0..100.0_f64) {
        let depth = debris_depth_coefficient(DebrisZone::Other, feet(length)).unwrap();
        let blockage = blockage_coefficient(feet(length)).unwrap();
        prop_assert!((0.0..=1.0).contains(&depth) && (0.0..=1.0).contains(&blockage));
    }
}

#[test]
fn special_impact_is_100_lb_on_each_foot() {
    let impact = Impact::special();
    assert_eq!(impact.width(), None);
    let band = impact.band(feet(0.0));
    assert_abs_diff_eq!(
        band.at_to.get::<pound_per_square_foot>(),
        100.0,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(in_pounds_per_foot(band.force()), 100.0, epsilon = 1e-9);
}

/// FEMA P-55 (2011) vol. II and the commentary of ASCE 7, from memory.
#[test]
fn coefficients_have_the_values_of_their_tables() {
    for (depth, expected) in [
        (0.0, 0.0),
        (1.0, 0.0),
        (2.0, 0.25),
        (3.0, 0.5),
        (4.0, 0.75),
        (5.0, 1.0),
        (9.0, 1.0),
    ] {
        let found = debris_depth_coefficient(DebrisZone::Other, feet(depth)).unwrap();
        assert_abs_diff_eq!(found, expected, epsilon = 1e-12);
        let full = debris_depth_coefficient(DebrisZone::FloodwayOrCoastal, feet(depth)).unwrap();
        assert_abs_diff_eq!(full, 1.0);
    }
    for (width, expected) in [
        (0.0, 0.0),
        (5.0, 0.0),
        (10.0, 0.2),
        (20.0, 0.6),
        (30.0, 1.0),
        (90.0, 1.0),
    ] {
        assert_abs_diff_eq!(
            blockage_coefficient(feet(width)).unwrap(),
            expected,
            epsilon = 1e-12
        );
    }
    for (ratio, expected) in [
        (0.05, 0.2),
        (0.1, 0.4),
        (0.2, 0.8),
        (0.3, 1.1),
        (0.4, 1.4),
        (0.5, 1.5),
        (0.6, 1.7),
        (0.7, 1.8),
        (0.8, 1.8),
        (0.9, 1.8),
        (1.0, 1.7),
        (1.1, 1.7),
        (1.2, 1.6),
        (1.3, 1.6),
        (1.4, 1.5),
        (9.0, 1.5),
    ] {
        let found = response_ratio(seconds(ratio), seconds(1.0)).unwrap();
        assert_abs_diff_eq!(found, expected, epsilon = 1e-9);
    }
    let importance: Vec<f64> = RiskCategory::CHOICES
        .iter()
        .map(|(_, each)| importance_coefficient(*each))
        .collect();
    assert_eq!(importance, [0.6, 1.0, 1.2, 1.3]);
}

#[test]
fn each_method_says_where_it_stands() {
    let commentary = CommentaryImpact::usual(RiskCategory::II, 1.0, 1.0, 1.0);
    let guidance = GuidanceImpact {
        weight: object_weight(),
        depth_coefficient: 1.0,
        blockage: 1.0,
        structure: StruckStructure::ConcretePileOrMomentFrame,
    };
    let sure = |method: ImpactMethod| method.reference().confidence;
    assert_eq!(sure(ImpactMethod::default()), Confidence::Seen);
    assert_eq!(
        sure(ImpactMethod::Commentary(commentary)),
        Confidence::FromMemory
    );
    assert_eq!(
        sure(ImpactMethod::Guidance(guidance)),
        Confidence::FromMemory
    );
    let slower = StoppedObject {
        time: seconds(1.0),
        ..StoppedObject::default()
    };
    assert_ne!(sure(ImpactMethod::Stopped(slower)), Confidence::Seen);
}

#[test]
fn impossible_numbers_are_refused() {
    let velocity = feet_per_second(5.0);
    let object = StoppedObject::default();
    assert!(object.force(feet_per_second(-1.0)).is_err());
    assert!(
        StoppedObject {
            time: seconds(0.0),
            ..object
        }
        .force(velocity)
        .is_err()
    );
    assert!(
        StoppedObject {
            weight: -object.weight,
            ..object
        }
        .force(velocity)
        .is_err()
    );
    for wrong in [-0.1, 1.1, f64::NAN] {
        assert!(
            CommentaryImpact::usual(RiskCategory::II, wrong, 1.0, 1.0)
                .force(velocity)
                .is_err()
        );
        assert!(
            CommentaryImpact::usual(RiskCategory::II, 1.0, wrong, 1.0)
                .force(velocity)
                .is_err()
        );
    }
    assert!(
        CommentaryImpact::usual(RiskCategory::II, 1.0, 1.0, 1.9)
            .force(velocity)
            .is_err()
    );
    assert!(debris_depth_coefficient(DebrisZone::Other, feet(-1.0)).is_err());
    assert!(response_ratio(seconds(0.0), seconds(1.0)).is_err());
}
