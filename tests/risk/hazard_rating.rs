//! The hazard of water for people.

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use sillmark::quantity::unit::{Length, Velocity, meter, meter_per_second};
use sillmark::risk::{Debris, HazardClass, HazardEdition, HazardRating, LandUse, hazard_rating};

fn rating(depth: f64, speed: f64, debris: Debris) -> HazardRating {
    hazard_rating(
        Length::new::<meter>(depth),
        Velocity::new::<meter_per_second>(speed),
        debris,
    )
    .unwrap()
}

fn factor(depth: f64, speed: f64, debris: Debris) -> f64 {
    rating(depth, speed, debris).debris_factor
}

#[test]
fn the_conservative_factor_begins_above_a_quarter_metre_or_two_metres_a_second() {
    for (depth, speed, expected) in [
        (0.25, 0.0, 0.0),
        (0.251, 0.0, 1.0),
        (0.1, 2.0, 0.0),
        (0.1, 2.01, 1.0),
        (0.0, 5.0, 0.0),
    ] {
        let found = factor(depth, speed, Debris::Conservative);
        assert_abs_diff_eq!(found, expected);
    }
}

/// The table of FD2320, from memory: rows of depth, columns pasture, woodland, urban.
#[test]
fn the_factor_by_land_use_follows_the_table() {
    for (depth, speed, row) in [
        (0.2, 1.0, [0.0, 0.0, 0.0]),
        (0.5, 1.0, [0.0, 0.5, 1.0]),
        (0.8, 1.0, [0.5, 1.0, 1.0]),
        (0.2, 2.1, [0.5, 1.0, 1.0]),
    ] {
        let columns = [LandUse::Pasture, LandUse::Woodland, LandUse::Urban];
        for (land, expected) in columns.into_iter().zip(row) {
            assert_abs_diff_eq!(factor(depth, speed, Debris::From(land)), expected);
        }
    }
}

#[test]
fn the_editions_differ_in_where_all_are_in_danger() {
    let class = |value, edition| {
        let rating = HazardRating {
            value,
            ..rating(0.0, 0.0, Debris::Conservative)
        };
        rating.class(edition)
    };
    for (value, note, guidance) in [
        (0.0, HazardClass::Low, HazardClass::Low),
        (0.749, HazardClass::Low, HazardClass::Low),
        (0.75, HazardClass::Some, HazardClass::Some),
        (1.25, HazardClass::Most, HazardClass::Most),
        (2.0, HazardClass::Most, HazardClass::Most),
        (2.2, HazardClass::All, HazardClass::Most),
        (2.6, HazardClass::All, HazardClass::All),
    ] {
        assert_eq!(class(value, HazardEdition::Note2008), note, "{value}");
        assert_eq!(class(value, HazardEdition::Fd2321), guidance, "{value}");
    }
    for edition in [HazardEdition::Note2008, HazardEdition::Fd2321] {
        assert!(edition.citation().to_string().ends_with("(from memory)"));
    }
}

#[test]
fn water_that_cannot_be_is_refused() {
    let error = hazard_rating(
        Length::new::<meter>(-0.1),
        Velocity::default(),
        Debris::Conservative,
    )
    .unwrap_err();
    assert_eq!(
        error.to_string(),
        "water depth \"-0.1 m\": it is negative; accepted: zero or more"
    );
}

proptest! {
    #[test]
    fn deeper_or_faster_is_never_safer(
        depth in 0.0..3.0, deeper in 0.0..1.0, speed in 0.0..5.0, faster in 0.0..2.0,
        land in prop::sample::select(vec![
            Debris::Conservative,
            Debris::From(LandUse::Pasture),
            Debris::From(LandUse::Woodland),
            Debris::From(LandUse::Urban),
            Debris::Stated(0.4),
        ]),
    ) {
        let more = rating(depth + deeper, speed + faster, land);
        let less = rating(depth, speed, land);
        prop_assert!(more.value >= less.value);
        prop_assert!(more.class(HazardEdition::Note2008) >= less.class(HazardEdition::Note2008));
        prop_assert!(less.class(HazardEdition::Note2008) >= less.class(HazardEdition::Fd2321));
        prop_assert!(rating(depth, speed, Debris::Conservative).value
            >= rating(depth, speed, Debris::From(LandUse::Woodland)).value - 1e-12);
    }

    #[test]
    fn any_numbers(depth in any::<f64>(), speed in any::<f64>(), debris in any::<f64>()) {
        let found = hazard_rating(
            Length::new::<meter>(depth),
            Velocity::new::<meter_per_second>(speed),
            Debris::Stated(debris),
        );
        if let Ok(rating) = found {
            prop_assert!(rating.value.is_finite());
        }
    }
}
