//! The course of a response along the member, and its extremes.

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use sillmark::beam::{Beam, Supports};
use sillmark::quantity::unit::{Length, in_newton_metres, meter, newton};

use super::random::{any_beam, scales};
use super::{beam, load, metres, point, read};

proptest! {
    /// The greatest response is the response at its place, and nothing along the member passes
    /// it.
    #[test]
    fn nothing_passes_the_extremes(beam in any_beam()) {
        let response = beam.response().unwrap();
        let (shear, moment, deflection) = (
            response.greatest_shear(),
            response.greatest_moment(),
            response.greatest_deflection(),
        );
        let greatest = [
            shear.value.get::<newton>(),
            in_newton_metres(moment.value),
            deflection.value.get::<meter>(),
        ];
        let [forces, moments, deflections] = scales(&beam).map(|scale| 1e-11 * scale);
        for station in 0..=400 {
            let at = beam.length * f64::from(station) / 400.0;
            prop_assert!(response.shear_at(at).get::<newton>().abs() <= greatest[0] + forces);
            prop_assert!(in_newton_metres(response.moment_at(at)).abs() <= greatest[1] + moments);
            let swing = response.deflection_at(at).get::<meter>().abs();
            prop_assert!(swing <= greatest[2] + deflections);
        }
        let at_its_place = in_newton_metres(response.moment_at(moment.at)).abs();
        prop_assert!((at_its_place - greatest[1]).abs() <= moments);
        let at_its_place = response.deflection_at(deflection.at).get::<meter>().abs();
        prop_assert!((at_its_place - greatest[2]).abs() <= deflections);
        // The shear may jump at its place, so it is read on both sides.
        let nudge = beam.length * 1e-9;
        let beside = [-1.0, 0.0, 1.0].map(|side| {
            let read = response.shear_at(shear.at + nudge * side).get::<newton>();
            (read.abs() - greatest[0]).abs()
        });
        let least = beside.into_iter().fold(f64::INFINITY, f64::min);
        prop_assert!(least <= 1e-7 * scales(&beam)[0], "{least} {shear:?}");
    }

    /// M′ = V by Simpson's rule, exact for a shear of degree 2, and E·I·v″ = −M by Numerov's
    /// rule, exact for a deflection of degree 5; as far as the nearest cut on either side.
    #[test]
    fn moment_and_deflection_follow_the_shear(beam in any_beam(), share in 0.0..1.0_f64) {
        let length = beam.length.get::<meter>();
        let at = share * length;
        let step = cuts(&beam).map(|cut| (cut - at).abs()).fold(f64::INFINITY, f64::min);
        prop_assume!(step > 1e-3 * length);
        // Just short of the cut, where the shear may jump.
        let step = step * (1.0 - 1e-9);
        let [before, here, after] = [at - step, at, at + step].map(|at| read(&beam, at));
        let [_, moments, deflections] = scales(&beam);
        let area = step / 3.0 * (before[0] + 4.0 * here[0] + after[0]);
        let left = after[1] - before[1] - area;
        prop_assert!(left.abs() <= 1e-11 * moments, "{left}");
        let mean = here[1] + (before[1] - 2.0 * here[1] + after[1]) / 12.0;
        let bend = -step * step * mean / beam.rigidity.value;
        let left = after[2] - 2.0 * here[2] + before[2] - bend;
        prop_assert!(left.abs() <= 1e-11 * deflections, "{left}");
    }
}

/// Where the response may have a corner or a jump.
fn cuts(beam: &Beam) -> impl Iterator<Item = f64> {
    let prop = match beam.supports {
        Supports::Propped { at } | Supports::PinnedAndPropped { at } => Some(at),
        Supports::SimplySupported | Supports::Cantilever => None,
    };
    let loads = beam.loads.iter().flat_map(|load| [load.from, load.to]);
    let points = beam.points.iter().map(|load| load.at);
    loads
        .chain(points)
        .chain(prop)
        .chain([Length::default(), beam.length])
        .map(|at| at.get::<meter>())
}

#[test]
fn a_member_without_load_does_nothing() {
    let response = beam(2.0, 1e4, Supports::Propped { at: metres(1.0) })
        .response()
        .unwrap();
    assert_abs_diff_eq!(response.greatest_shear().value.get::<newton>(), 0.0);
    assert_abs_diff_eq!(response.greatest_deflection().value.get::<meter>(), 0.0);
    assert_abs_diff_eq!(response.greatest_deflection().at.get::<meter>(), 0.0);
}

#[test]
fn a_load_that_begins_where_it_ends_does_nothing() {
    let loaded = beam(2.0, 1e4, Supports::Cantilever).with_load(load(1.0, 1.0, 500.0, 900.0));
    let response = loaded.response().unwrap();
    assert_abs_diff_eq!(response.greatest_shear().value.get::<newton>(), 0.0);
}

#[test]
fn the_shear_jumps_by_a_point_load_and_is_read_beyond_it() {
    let plank = beam(2.0, 1e4, Supports::SimplySupported).with_point(point(0.5, 400.0));
    assert_abs_diff_eq!(read(&plank, 0.5 - 1e-9)[0], 300.0, epsilon = 1e-9);
    assert_abs_diff_eq!(read(&plank, 0.5)[0], -100.0, epsilon = 1e-9);
    assert_abs_diff_eq!(read(&plank, 2.0)[0], -100.0, epsilon = 1e-9);
    let greatest = plank.response().unwrap().greatest_shear();
    assert_abs_diff_eq!(greatest.value.get::<newton>(), 300.0, epsilon = 1e-9);
}

/// P·L³/(3·E·I) and P·L; a load on a support goes straight into it.
#[test]
fn point_loads_at_the_ends() {
    let post = beam(2.0, 1e4, Supports::Cantilever).with_point(point(2.0, 300.0));
    assert_abs_diff_eq!(read(&post, 2.0)[2], 0.08, epsilon = 1e-12);
    assert_abs_diff_eq!(read(&post, 0.0)[1], -600.0, epsilon = 1e-9);
    assert_abs_diff_eq!(read(&post, 2.0)[0], 300.0, epsilon = 1e-9);

    let plank = beam(2.0, 1e4, Supports::SimplySupported)
        .with_point(point(0.0, 70.0))
        .with_point(point(2.0, 30.0));
    let response = plank.response().unwrap();
    assert_abs_diff_eq!(response.start().force.get::<newton>(), 70.0, epsilon = 1e-9);
    assert_abs_diff_eq!(response.other().get::<newton>(), 30.0, epsilon = 1e-9);
    let moment = in_newton_metres(response.greatest_moment().value);
    assert_abs_diff_eq!(moment, 0.0, epsilon = 1e-9);
}

/// A plank under a load that falls from +q to −q, by hand: V(0) = q·L/6, V(L/2) = −q·L/12.
#[test]
fn a_load_that_changes_its_sign() {
    let plank = beam(3.0, 1e4, Supports::SimplySupported).with_load(load(0.0, 3.0, 600.0, -600.0));
    assert_abs_diff_eq!(read(&plank, 0.0)[0], 300.0, epsilon = 1e-9);
    assert_abs_diff_eq!(read(&plank, 1.5)[0], -150.0, epsilon = 1e-9);
    // The moment is antisymmetric, greatest where q·x − q·x²/L is q·L/6: x = 0.21132·L.
    let greatest = plank.response().unwrap().greatest_moment();
    assert_abs_diff_eq!(greatest.at.get::<meter>(), 0.211_325 * 3.0, epsilon = 1e-5);
    // Of the two that are equal, the one nearer the start.
    assert_abs_diff_eq!(
        in_newton_metres(greatest.value),
        read(&plank, 3.0 * 0.788_675)[1].abs(),
        epsilon = 1e-6
    );
}

/// A post under a load that falls from +q at its base to −q at its top holds itself; the
/// greatest shear is q·L/4, halfway up, where the load changes its sign.
#[test]
fn the_shear_may_be_greatest_within_a_load() {
    let post = beam(3.0, 1e4, Supports::Cantilever).with_load(load(0.0, 3.0, 600.0, -600.0));
    let response = post.response().unwrap();
    assert_abs_diff_eq!(response.start().force.get::<newton>(), 0.0, epsilon = 1e-9);
    let greatest = response.greatest_shear();
    assert_abs_diff_eq!(greatest.value.get::<newton>(), 450.0, epsilon = 1e-9);
    assert_abs_diff_eq!(greatest.at.get::<meter>(), 1.5, epsilon = 1e-9);
}

/// An overhang of half the span swings more than the span: the tip governs.
#[test]
fn the_tip_of_an_overhang_may_swing_farthest() {
    let post = beam(3.0, 1e4, Supports::PinnedAndPropped { at: metres(2.0) })
        .with_point(point(3.0, 100.0));
    let greatest = post.response().unwrap().greatest_deflection();
    assert_abs_diff_eq!(greatest.at.get::<meter>(), 3.0, epsilon = 1e-12);
    // P·c²·(L + c)/(3·E·I) with span L and overhang c, from memory.
    assert_abs_diff_eq!(greatest.value.get::<meter>(), 0.01, epsilon = 1e-12);
}

#[test]
#[allow(clippy::float_cmp)] // the very same numbers
fn a_position_beyond_an_end_reads_the_end() {
    let post = beam(2.0, 1e4, Supports::Cantilever).with_load(load(0.0, 2.0, 900.0, 0.0));
    assert_eq!(read(&post, 2.5), read(&post, 2.0));
    assert_eq!(read(&post, -0.5), read(&post, 0.0));
}
