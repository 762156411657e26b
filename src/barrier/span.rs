//! One plank between two posts: what the water asks of it.

use super::check::{Amount, Check, LoadCase};
use super::{Basis, DesignError, Plank, bending_capacity, shear_capacity};
use crate::beam::{Beam, BeamError, LinearLoad, Response};
use crate::quantity::unit::Force;
use crate::quantity::{Length, LineLoad};

/// The load on one plank: the water over its whole length, and debris that strikes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlankLoad {
    /// Water on each unit of length.
    pub water: LineLoad,
    /// A blow somewhere on the span.
    pub blow: Option<Blow>,
}

/// A force spread over a length of a plank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blow {
    /// The force that the plank takes.
    pub force: Force,
    /// The length that it is spread over.
    pub spread: Length,
}

/// Where a blow strikes a plank.
#[derive(Clone, Copy)]
enum Strikes {
    /// In the middle, where it bends the plank most.
    Middle,
    /// Beside a post, where it shears the plank most.
    BesidePost,
}

impl PlankLoad {
    fn response(
        self,
        plank: &Plank,
        bearing: Length,
        factor: f64,
        strikes: Strikes,
    ) -> Result<Response, BeamError> {
        let rigidity = plank.material.modulus * plank.section.second_moment;
        let zero = Length::default();
        let mut beam = Beam::simple(bearing, rigidity).with_load(LinearLoad::uniform(
            zero,
            bearing,
            self.water * factor,
        ));
        if let Some(blow) = self.blow {
            let spread = blow.spread.min(bearing);
            let from = match strikes {
                Strikes::Middle => (bearing - spread) / 2.0,
                Strikes::BesidePost => zero,
            };
            let load = blow.force * factor / spread;
            beam = beam.with_load(LinearLoad::uniform(from, from + spread, load));
        }
        beam.response()
    }
}

/// Bending, shear and deflection of one plank over a bearing length.
///
/// The plank is a beam on two supports (M = w·L²/8, V = w·L/2, δ = 5·w·L⁴/(384·E·I) under
/// water alone). Strength is checked with the load factor, deflection without.
///
/// # Errors
/// [`DesignError`] where the length is not more than nothing, or the plank's standard has no
/// strength on the basis asked for.
pub fn plank_checks(
    plank: &Plank,
    name: &str,
    bearing: Length,
    load: PlankLoad,
    basis: &Basis,
    case: LoadCase,
) -> Result<[Check; 3], DesignError> {
    let bent = load.response(plank, bearing, basis.factor, Strikes::Middle)?;
    let sheared = load.response(plank, bearing, basis.factor, Strikes::BesidePost)?;
    let sagging = load.response(plank, bearing, 1.0, Strikes::Middle)?;
    let bending = bending_capacity(&plank.section, &plank.material, basis.strength)?;
    let shear = shear_capacity(&plank.section, &plank.material, basis.strength)?;
    let greatest_shear = bent
        .greatest_shear()
        .value
        .max(sheared.greatest_shear().value);
    let check = |what, demand, capacity, reference| Check {
        part: name.to_owned(),
        what,
        case,
        demand,
        capacity,
        reference,
    };
    Ok([
        check(
            "bending",
            Amount::Moment(bent.greatest_moment().value),
            Amount::Moment(bending.value),
            basis.strength_reference(&bending),
        ),
        check(
            "shear",
            Amount::Force(greatest_shear),
            Amount::Force(shear.value),
            basis.strength_reference(&shear),
        ),
        check(
            "deflection",
            Amount::Deflection(sagging.greatest_deflection().value),
            Amount::Deflection(basis.deflection.of(bearing)),
            basis.deflection.reference("span"),
        ),
    ])
}
