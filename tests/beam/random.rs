//! Random members: spans of 0.1 m to 20 m, rigidities of 1 to 10⁸ N·m², all supports.

use proptest::prelude::*;
use sillmark::beam::{Beam, Supports};
use sillmark::quantity::unit::{in_newtons_per_metre, meter, newton};

use super::{beam, load, metres, point};

pub(super) fn supports(length: f64) -> impl Strategy<Value = Supports> {
    (0..4, 0.02..=1.0_f64).prop_map(move |(kind, share)| {
        let at = metres(share * length);
        match kind {
            0 => Supports::SimplySupported,
            1 => Supports::Cantilever,
            2 => Supports::Propped { at },
            _ => Supports::PinnedAndPropped { at },
        }
    })
}

/// A member without loads.
pub(super) fn bare() -> impl Strategy<Value = Beam> {
    (0.1..20.0_f64, 0.0..8.0_f64).prop_flat_map(|(length, exponent)| {
        supports(length).prop_map(move |supports| beam(length, 10_f64.powf(exponent), supports))
    })
}

/// The member with up to four distributed and three point loads, with and against the water.
pub(super) fn loaded(bare: Beam) -> impl Strategy<Value = Beam> {
    let length = bare.length.get::<meter>();
    let newtons = -30_000.0..30_000.0_f64;
    let linear = (
        0.0..=1.0_f64,
        0.0..=1.0_f64,
        newtons.clone(),
        newtons.clone(),
    );
    let points = (0.0..=1.0_f64, newtons);
    (
        prop::collection::vec(linear, 0..5),
        prop::collection::vec(points, 0..4),
    )
        .prop_map(move |(linear, points)| {
            let mut beam = bare.clone();
            for (one, other, first, last) in linear {
                let (from, to) = (one.min(other) * length, one.max(other) * length);
                beam = beam.with_load(load(from, to, first, last));
            }
            for (at, force) in points {
                beam = beam.with_point(point(at * length, force));
            }
            beam
        })
}

pub(super) fn any_beam() -> impl Strategy<Value = Beam> {
    bare().prop_flat_map(loaded)
}

/// What rounding is measured by: all loads without their signs, in newtons, and a little.
pub(super) fn size(beam: &Beam) -> f64 {
    let linear = beam.loads.iter().map(|load| {
        (load.to - load.from).get::<meter>()
            * (in_newtons_per_metre(load.at_from).abs() + in_newtons_per_metre(load.at_to).abs())
    });
    let points = beam
        .points
        .iter()
        .map(|load| load.force.get::<newton>().abs());
    1e-9 + linear.chain(points).sum::<f64>()
}

/// How much a unit of the loads' size may matter: forces, moments and deflections. Next to a
/// prop close to the base forces are multiples of the load, and an overhang swings on it.
pub(super) fn scales(beam: &Beam) -> [f64; 3] {
    let length = beam.length.get::<meter>();
    let lever = match beam.supports {
        Supports::SimplySupported | Supports::Cantilever => 1.0,
        Supports::Propped { at } | Supports::PinnedAndPropped { at } => length / at.get::<meter>(),
    };
    let size = size(beam) * lever;
    let moment = size * length;
    [size, moment, moment * length * length / beam.rigidity.value]
}
