//! Masses and the people who lift them.

use proptest::prelude::*;
use sillmark::barrier::{LiftLimit, Piece, handling};
use sillmark::quantity::unit::{Length, Mass, kilogram, meter};

fn piece(name: &str, mass: Option<f64>, count: u32) -> Piece {
    Piece {
        name: name.into(),
        length: Length::new::<meter>(2.0),
        mass: mass.map(Mass::new::<kilogram>),
        count,
    }
}

fn people(mass: f64) -> Option<u64> {
    let limit = LiftLimit::niosh_load_constant();
    handling(&[piece("plank", Some(mass), 1)], &limit)
        .unwrap()
        .people_for_heaviest
}

#[test]
fn each_lifts_no_more_than_the_limit() {
    for (mass, expected) in [
        (0.0, 1),
        (22.9, 1),
        (23.0, 1),
        (23.01, 2),
        (46.0, 2),
        (46.1, 3),
    ] {
        assert_eq!(people(mass), Some(expected), "{mass} kg");
    }
}

#[test]
fn the_heaviest_is_found_among_pieces_that_are_there() {
    let pieces = [
        piece("plank", Some(12.0), 8),
        piece("post", Some(31.0), 2),
        piece("spare post", Some(90.0), 0),
    ];
    let found = handling(&pieces, &LiftLimit::niosh_load_constant()).unwrap();
    assert_eq!(found.pieces, 10);
    assert!((found.total_mass.get::<kilogram>() - 158.0).abs() < 1e-9);
    assert_eq!(found.heaviest.unwrap().name, "post");
    assert_eq!(found.people_for_heaviest, Some(2));
    assert!(found.mass_not_stated.is_empty());
}

#[test]
fn a_piece_without_a_mass_is_named() {
    let pieces = [piece("plank", Some(12.0), 8), piece("post", None, 2)];
    let found = handling(&pieces, &LiftLimit::niosh_load_constant()).unwrap();
    assert_eq!(found.mass_not_stated, ["post"]);
    let unknown = handling(&pieces[1..], &LiftLimit::niosh_load_constant()).unwrap();
    assert_eq!(unknown.people_for_heaviest, None);
    assert_eq!(unknown.heaviest, None);
}

#[test]
fn a_mass_that_cannot_be_is_refused() {
    let limit = LiftLimit::niosh_load_constant();
    let error = handling(&[piece("plank", Some(-1.0), 1)], &limit).unwrap_err();
    assert_eq!(
        error.to_string(),
        "mass of a piece \"-1 kg\": it is negative; accepted: zero or more"
    );
    let none = LiftLimit {
        mass: Mass::new::<kilogram>(0.0),
        ..limit
    };
    assert!(handling(&[], &none).is_err());
}

proptest! {
    #[test]
    fn the_people_suffice_and_one_less_would_not(mass in 0.1..500.0, limit in 1.0..60.0) {
        let limit = LiftLimit {
            mass: Mass::new::<kilogram>(limit),
            ..LiftLimit::niosh_load_constant()
        };
        let found = handling(&[piece("plank", Some(mass), 3)], &limit).unwrap();
        // Counts this small are exact.
        #[allow(clippy::cast_precision_loss)]
        let people = found.people_for_heaviest.unwrap() as f64;
        let limit = limit.mass.get::<kilogram>();
        prop_assert!(mass / people <= limit * (1.0 + 1e-8));
        prop_assert!(people < 1.5 || mass / (people - 1.0) > limit);
    }

    #[test]
    fn any_numbers(mass in any::<f64>(), limit in any::<f64>(), count in any::<u32>()) {
        let limit = LiftLimit {
            mass: Mass::new::<kilogram>(limit),
            ..LiftLimit::niosh_load_constant()
        };
        if let Ok(found) = handling(&[piece("plank", Some(mass), count)], &limit) {
            prop_assert!(found.total_mass.value.is_finite());
        }
    }
}
