//! What is no beam, and what is said of it.

use sillmark::beam::{Beam, Supports};

use super::{beam, load, metres, point, read};

fn refused(beam: &Beam) -> String {
    beam.response().unwrap_err().to_string()
}

fn plank() -> Beam {
    beam(2.0, 1e4, Supports::SimplySupported)
}

#[test]
fn members_and_props() {
    for (length, said) in [
        (0.0, "0"),
        (-1.5, "-1.5"),
        (f64::NAN, "NaN"),
        (f64::INFINITY, "inf"),
    ] {
        assert_eq!(
            refused(&beam(length, 1e4, Supports::Cantilever)),
            format!("a member {said} m long does not bend; accepted: a finite length above 0 m")
        );
    }
    for (rigidity, said) in [
        (0.0, "0"),
        (-2.0, "-2"),
        (f64::NAN, "NaN"),
        (f64::INFINITY, "inf"),
    ] {
        assert_eq!(
            refused(&beam(2.0, rigidity, Supports::Cantilever)),
            format!(
                "a flexural rigidity of {said} N·m² is not that of a member; accepted: a finite \
                 rigidity above 0 N·m²"
            )
        );
    }
    for (at, said) in [(0.0, "0"), (-0.1, "-0.1"), (2.1, "2.1"), (f64::NAN, "NaN")] {
        let at = metres(at);
        for supports in [Supports::Propped { at }, Supports::PinnedAndPropped { at }] {
            assert_eq!(
                refused(&beam(2.0, 1e4, supports)),
                format!(
                    "a prop at {said} m does not hold the member; accepted: above 0 m and up to \
                     the member's length, 2 m"
                )
            );
        }
    }
}

#[test]
fn loads() {
    for (from, to) in [
        (-0.5, 1.0),
        (0.5, 2.5),
        (f64::NAN, 1.0),
        (0.0, f64::INFINITY),
    ] {
        assert_eq!(
            refused(&plank().with_load(load(from, to, 1.0, 1.0))),
            format!(
                "a load from {from} m to {to} m is not on the member; accepted: between 0 m and \
                 its length, 2 m"
            )
        );
    }
    assert_eq!(
        refused(&plank().with_load(load(1.5, 0.5, 1.0, 1.0))),
        "a load begins at 1.5 m and ends at 0.5 m; accepted: an end not before the beginning"
    );
    assert_eq!(
        refused(&plank().with_load(load(0.0, 2.0, f64::NAN, 300.0))),
        "a load from NaN N/m to 300 N/m cannot be computed with; accepted: finite numbers"
    );
    assert_eq!(
        refused(&plank().with_point(point(2.5, 10.0))),
        "a point load at 2.5 m is not on the member; accepted: between 0 m and its length, 2 m"
    );
    assert_eq!(
        refused(&plank().with_point(point(1.0, f64::INFINITY))),
        "a point load of inf N cannot be computed with; accepted: a finite number"
    );
}

#[test]
fn finite_numbers_whose_product_is_not() {
    assert_eq!(
        refused(&plank().with_load(load(0.0, 2.0, 1e308, 1e308))),
        "the bending of a member 2 m long with 10000 N·m² under its loads is no finite number; \
         accepted: loads and lengths of the size of a building"
    );
    let limp = beam(2.0, 1e-308, Supports::Cantilever).with_load(load(0.0, 2.0, 1e6, 0.0));
    assert!(refused(&limp).contains("no finite number"));
}

/// 0.1 + 0.2 is more than 0.3.
#[test]
#[allow(clippy::float_cmp)] // the very same numbers
fn a_place_that_passes_the_end_by_rounding_is_at_the_end() {
    let sum = 0.1 + 0.2;
    assert!(sum > 0.3);
    let plank = |to| {
        beam(0.3, 1e4, Supports::Propped { at: metres(to) })
            .with_load(load(0.0, to, 0.0, 900.0))
            .with_point(point(to, 10.0))
    };
    assert_eq!(read(&plank(sum), 0.2), read(&plank(0.3), 0.2));
}
