//! Bending of one straight member.

use sillmark::beam::{Beam, LinearLoad, PointLoad, Supports};
use sillmark::quantity::unit::{
    Force, Length, in_newton_metres, meter, newton, newton_square_metres, newtons_per_metre,
};

mod laws;
mod prop;
mod random;
mod refusals;
mod shape;

fn metres(number: f64) -> Length {
    Length::new::<meter>(number)
}

fn load(from: f64, to: f64, at_from: f64, at_to: f64) -> LinearLoad {
    LinearLoad {
        from: metres(from),
        to: metres(to),
        at_from: newtons_per_metre(at_from),
        at_to: newtons_per_metre(at_to),
    }
}

fn point(at: f64, force: f64) -> PointLoad {
    PointLoad {
        at: metres(at),
        force: Force::new::<newton>(force),
    }
}

fn beam(length: f64, rigidity: f64, supports: Supports) -> Beam {
    Beam::new(metres(length), newton_square_metres(rigidity), supports)
}

/// Shear, moment and deflection at a place, in newtons and metres.
fn read(beam: &Beam, at: f64) -> [f64; 3] {
    let response = beam.response().unwrap();
    let at = metres(at);
    [
        response.shear_at(at).get::<newton>(),
        in_newton_metres(response.moment_at(at)),
        response.deflection_at(at).get::<meter>(),
    ]
}
