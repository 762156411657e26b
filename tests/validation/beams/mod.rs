//! Bending of members: published examples and formulas, and another library.
//!
//! Where a source rounds, the tolerance is half a unit of its last digit.

use sillmark::beam::{Beam, LinearLoad, Response};
use sillmark::quantity::unit::{
    Force, Length, meter, newton, newton_square_metres, newtons_per_metre,
};

mod examples;
mod formulas;
mod peer;

/// No example of stresses depends on it.
pub(super) const ANY_RIGIDITY: f64 = 1e5;

/// Of formulas, which are exact.
pub(super) const EXACT: f64 = 1e-12;

pub(super) fn metres(number: f64) -> Length {
    Length::new::<meter>(number)
}

pub(super) fn newtons(force: Force) -> f64 {
    force.get::<newton>()
}

/// A load over the first `length` metres, from one value at the start to another.
pub(super) fn load(length: f64, at_start: f64, at_end: f64) -> LinearLoad {
    LinearLoad {
        from: metres(0.0),
        to: metres(length),
        at_from: newtons_per_metre(at_start),
        at_to: newtons_per_metre(at_end),
    }
}

pub(super) fn plank(span: f64, rigidity: f64, load: LinearLoad) -> Response {
    let beam = Beam::simple(metres(span), newton_square_metres(rigidity));
    beam.with_load(load).response().unwrap()
}

pub(super) fn post(height: f64, rigidity: f64, load: LinearLoad) -> Response {
    let beam = Beam::cantilever(metres(height), newton_square_metres(rigidity));
    beam.with_load(load).response().unwrap()
}

pub(super) fn propped(height: f64, rigidity: f64, at: f64, load: LinearLoad) -> Response {
    let beam = Beam::propped(metres(height), newton_square_metres(rigidity), metres(at));
    beam.with_load(load).response().unwrap()
}
