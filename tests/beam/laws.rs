//! Laws that every elastic member obeys.

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use sillmark::beam::{Beam, Supports};
use sillmark::quantity::unit::{in_newton_metres, in_newtons_per_metre, meter, newton};

use super::random::{any_beam, bare, loaded, scales};
use super::{load, metres, point, read};

/// What is allowed for rounding, of the scale of each response.
const ROUNDING: f64 = 1e-11;

/// The loads and their moment about the start by Gauss's rule with two points, exact for the
/// cubic and so for the quadratic x·q.
fn resultant(beam: &Beam) -> (f64, f64) {
    let (mut force, mut turning) = (0.0, 0.0);
    for load in &beam.loads {
        let (from, to) = (load.from.get::<meter>(), load.to.get::<meter>());
        let (first, last) = (
            in_newtons_per_metre(load.at_from),
            in_newtons_per_metre(load.at_to),
        );
        for share in [0.5 - 0.75_f64.sqrt() / 3.0, 0.5 + 0.75_f64.sqrt() / 3.0] {
            let weight = (to - from) / 2.0 * (first + share * (last - first));
            force += weight;
            turning += weight * (from + share * (to - from));
        }
    }
    for load in &beam.points {
        force += load.force.get::<newton>();
        turning += load.force.get::<newton>() * load.at.get::<meter>();
    }
    (force, turning)
}

/// Where the second support stands; for a cantilever, which has none, the far end.
fn second(beam: &Beam) -> f64 {
    match beam.supports {
        Supports::Propped { at } | Supports::PinnedAndPropped { at } => at.get::<meter>(),
        Supports::SimplySupported | Supports::Cantilever => beam.length.get::<meter>(),
    }
}

proptest! {
    #[test]
    fn supports_and_loads_are_in_equilibrium(beam in any_beam()) {
        let response = beam.response().unwrap();
        let (force, turning) = resultant(&beam);
        let start = response.start();
        let other = response.other().get::<newton>();
        let [forces, moments, _] = scales(&beam);
        let left = start.force.get::<newton>() + other - force;
        prop_assert!(left.abs() <= ROUNDING * forces, "{left}");
        let left = in_newton_metres(start.moment) + other * second(&beam) - turning;
        prop_assert!(left.abs() <= ROUNDING * moments, "{left}");
    }

    #[test]
    fn a_free_or_pinned_end_has_no_moment(beam in any_beam()) {
        let [_, moments, _] = scales(&beam);
        let at_end = read(&beam, beam.length.get::<meter>())[1];
        prop_assert!(at_end.abs() <= ROUNDING * moments, "{at_end}");
        if let Supports::SimplySupported | Supports::PinnedAndPropped { .. } = beam.supports {
            let at_start = in_newton_metres(beam.response().unwrap().start().moment);
            prop_assert!(read(&beam, 0.0)[1].abs() + at_start.abs() <= 0.0, "{at_start}");
        }
    }

    #[test]
    fn supports_do_not_give_way(beam in any_beam()) {
        let [.., deflections] = scales(&beam);
        prop_assert!(read(&beam, 0.0)[2].abs() <= 0.0);
        if beam.supports != Supports::Cantilever {
            let at_support = read(&beam, second(&beam))[2];
            prop_assert!(at_support.abs() <= ROUNDING * deflections, "{at_support}");
        }
    }

    #[test]
    fn responses_to_loads_add(
        (one, other) in bare().prop_flat_map(|bare| (loaded(bare.clone()), loaded(bare))),
        share in 0.0..1.0_f64,
    ) {
        let mut both = one.clone().with_loads(other.loads.clone());
        both.points.extend(&other.points);
        let at = share * both.length.get::<meter>();
        let (sum, parts) = (read(&both, at), [read(&one, at), read(&other, at)]);
        for (response, scale) in scales(&both).into_iter().enumerate() {
            let left = sum[response] - parts[0][response] - parts[1][response];
            prop_assert!(left.abs() <= ROUNDING * scale, "{response}: {left}");
        }
    }

    #[test]
    fn responses_scale_with_load_length_and_rigidity(
        beam in any_beam(),
        share in 0.0..1.0_f64,
        (loads, lengths, rigidities) in (0.1..10.0_f64, 0.1..10.0_f64, 0.1..10.0_f64),
    ) {
        let mut scaled = beam.clone();
        scaled.length *= lengths;
        scaled.rigidity *= rigidities;
        if let Supports::Propped { at } | Supports::PinnedAndPropped { at } = &mut scaled.supports {
            *at *= lengths;
        }
        for load in &mut scaled.loads {
            load.from *= lengths;
            load.to *= lengths;
            load.at_from *= loads / lengths;
            load.at_to *= loads / lengths;
        }
        for load in &mut scaled.points {
            load.at *= lengths;
            load.force *= loads;
        }
        let at = share * beam.length.get::<meter>();
        let (before, after) = (read(&beam, at), read(&scaled, at * lengths));
        let factors = [loads, loads * lengths, loads * lengths.powi(3) / rigidities];
        for (response, scale) in scales(&beam).into_iter().enumerate() {
            let left = after[response] / factors[response] - before[response];
            prop_assert!(left.abs() <= ROUNDING * scale, "{response}: {left}");
        }
    }

    #[test]
    fn a_plank_seen_from_behind_bends_the_same(beam in any_beam(), share in 0.0..1.0_f64) {
        let plank = Beam { supports: Supports::SimplySupported, ..beam };
        let mut mirrored = plank.clone();
        for load in &mut mirrored.loads {
            (load.from, load.to) = (plank.length - load.to, plank.length - load.from);
            (load.at_from, load.at_to) = (load.at_to, load.at_from);
        }
        for load in &mut mirrored.points {
            load.at = plank.length - load.at;
        }
        let at = share * plank.length.get::<meter>();
        let here = read(&plank, at);
        let there = read(&mirrored, plank.length.get::<meter>() - at);
        let [_, moments, deflections] = scales(&plank);
        prop_assert!((here[1] - there[1]).abs() <= ROUNDING * moments);
        prop_assert!((here[2] - there[2]).abs() <= ROUNDING * deflections);
    }

    /// A trapezoid of pressure rising to the middle and falling again, and two point loads.
    #[test]
    fn a_symmetric_load_bends_a_plank_symmetrically(
        length in 0.1..20.0_f64,
        (edge, middle) in (0.0..1e4_f64, 0.0..1e4_f64),
        (force, place) in (0.0..1e4_f64, 0.0..0.5_f64),
        share in 0.0..0.5_f64,
    ) {
        let plank = super::beam(length, 1e4, Supports::SimplySupported)
            .with_load(load(0.0, length / 2.0, edge, middle))
            .with_load(load(length / 2.0, length, middle, edge))
            .with_point(point(place * length, force))
            .with_point(point(length - place * length, force));
        let (left, right) = (read(&plank, share * length), read(&plank, (1.0 - share) * length));
        let [_, moments, deflections] = scales(&plank);
        prop_assert!((left[1] - right[1]).abs() <= ROUNDING * moments);
        prop_assert!((left[2] - right[2]).abs() <= ROUNDING * deflections);
        let response = plank.response().unwrap();
        let other = response.other().get::<newton>();
        prop_assert!((response.start().force.get::<newton>() - other).abs() <= 1e-9 * other.abs());
        let greatest = response.greatest_deflection().at.get::<meter>();
        prop_assert!(greatest == 0.0 || (greatest / length - 0.5).abs() < 1e-6, "{}", greatest);
    }
}

#[test]
fn a_load_in_parts_is_the_whole_load() {
    let supports = Supports::Propped { at: metres(1.3) };
    let post = super::beam(2.0, 5e4, supports);
    let whole = post.clone().with_load(load(0.0, 1.8, 9000.0, 0.0));
    let parts = post
        .with_load(load(0.0, 0.7, 9000.0, 5500.0))
        .with_load(load(0.7, 1.8, 5500.0, 0.0));
    for at in [0.0, 0.3, 0.7, 1.0, 1.3, 1.9, 2.0] {
        for (whole, parts) in read(&whole, at).into_iter().zip(read(&parts, at)) {
            assert_abs_diff_eq!(whole, parts, epsilon = 1e-9);
        }
    }
}
