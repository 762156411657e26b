//! The force of a prop against closed forms.

use approx::assert_relative_eq;
use proptest::prelude::*;
use sillmark::beam::Supports;
use sillmark::quantity::unit::{in_newton_metres, newton};

use super::{beam, load, metres, point, read};

proptest! {
    /// Still water to the top of a post that is propped at a: R = w·(10h³ − 10h²a + 5ha² −
    /// a³)/(40·h·a), from the deflection of the cantilever under a triangle (derived), whatever
    /// the rigidity.
    #[test]
    fn still_water(
        height in 0.1..20.0_f64,
        share in 0.01..=1.0_f64,
        exponent in 0.0..8.0_f64,
    ) {
        let (w, h, a) = (9810.0 * height, height, share * height);
        let post = beam(h, 10_f64.powf(exponent), Supports::Propped { at: metres(a) })
            .with_load(load(0.0, h, w, 0.0));
        let response = post.response().unwrap();
        let expected = w * (10.0 * h.powi(3) - 10.0 * h * h * a + 5.0 * h * a * a - a.powi(3))
            / (40.0 * h * a);
        assert_relative_eq!(response.other().get::<newton>(), expected, max_relative = 1e-11);
        let base = w * h * h / 6.0 - expected * a;
        assert_relative_eq!(
            in_newton_metres(response.start().moment),
            base,
            max_relative = 1e-9,
            epsilon = 1e-9 * expected * a
        );
    }

    /// A point load P at b on a post propped at a: R = P·b²·(3a − b)/(2a³) below the prop,
    /// R = P·(3b − a)/(2a) above it; from the deflections of a cantilever (from memory).
    #[test]
    fn a_point_load(
        height in 0.1..20.0_f64,
        prop in 0.05..=1.0_f64,
        place in 0.0..=1.0_f64,
    ) {
        let (force, a, b) = (1000.0, prop * height, place * height);
        let post = beam(height, 1e5, Supports::Propped { at: metres(a) })
            .with_point(point(b, force));
        let expected = if b <= a {
            force * b * b * (3.0 * a - b) / (2.0 * a.powi(3))
        } else {
            force * (3.0 * b - a) / (2.0 * a)
        };
        let found = post.response().unwrap().other().get::<newton>();
        assert_relative_eq!(found, expected, max_relative = 1e-11, epsilon = 1e-8);
    }
}

/// Equal load on a member pinned at the base, with a free overhang: by levers, R = q·h²/(2a).
#[test]
fn pinned_and_propped_by_levers() {
    let post = beam(1.5, 1e5, Supports::PinnedAndPropped { at: metres(1.2) })
        .with_load(load(0.0, 1.5, 800.0, 800.0));
    let response = post.response().unwrap();
    assert_relative_eq!(
        response.other().get::<newton>(),
        750.0,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        response.start().force.get::<newton>(),
        450.0,
        max_relative = 1e-12
    );
    // q·c²/2 of the overhang, in tension on the wet side.
    assert_relative_eq!(read(&post, 1.2)[1], -36.0, max_relative = 1e-11);
}
