//! One plank between two posts: what the water asks of it.

use super::check::{Amount, Check, LoadCase};
use super::{Basis, Capacity, DesignError, Plank, bending_capacity, shear_capacity};
use crate::beam::{Beam, BeamError, LinearLoad, Response};
use crate::quantity::unit::{Force, Moment};
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

/// What the loads ask of a plank, without load factors.
#[derive(Clone, Copy)]
struct Demands {
    moment: Moment,
    shear: Force,
    deflection: Length,
}

/// What a plank takes.
struct Capacities {
    bending: Capacity<Moment>,
    shear: Capacity<Force>,
}

impl PlankLoad {
    fn response(
        self,
        plank: &Plank,
        bearing: Length,
        strikes: Strikes,
    ) -> Result<Response, BeamError> {
        let rigidity = plank.material.modulus * plank.section.second_moment;
        let zero = Length::default();
        let mut beam = Beam::simple(bearing, rigidity)
            .with_load(LinearLoad::uniform(zero, bearing, self.water));
        if let Some(blow) = self.blow {
            let spread = blow.spread.min(bearing);
            let from = match strikes {
                Strikes::Middle => (bearing - spread) / 2.0,
                Strikes::BesidePost => zero,
            };
            let load = blow.force / spread;
            beam = beam.with_load(LinearLoad::uniform(from, from + spread, load));
        }
        beam.response()
    }

    fn demands(self, plank: &Plank, bearing: Length) -> Result<Demands, BeamError> {
        let bent = self.response(plank, bearing, Strikes::Middle)?;
        let mut shear = bent.greatest_shear().value;
        if self.blow.is_some() {
            let sheared = self.response(plank, bearing, Strikes::BesidePost)?;
            shear = shear.max(sheared.greatest_shear().value);
        }
        Ok(Demands {
            moment: bent.greatest_moment().value,
            shear,
            deflection: bent.greatest_deflection().value,
        })
    }
}

impl Capacities {
    fn of(plank: &Plank, basis: &Basis) -> Result<Self, DesignError> {
        Ok(Self {
            bending: bending_capacity(&plank.section, &plank.material, basis.strength)?,
            shear: shear_capacity(&plank.section, &plank.material, basis.strength)?,
        })
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
    // The plank is elastic, so that a factor on the load is one on moment and shear.
    let demands = load.demands(plank, bearing)?;
    let Capacities { bending, shear } = Capacities::of(plank, basis)?;
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
            Amount::Moment(demands.moment * basis.factor),
            Amount::Moment(bending.value),
            basis.strength_reference(&bending),
        ),
        check(
            "shear",
            Amount::Force(demands.shear * basis.factor),
            Amount::Force(shear.value),
            basis.strength_reference(&shear),
        ),
        check(
            "deflection",
            Amount::Deflection(demands.deflection),
            Amount::Deflection(basis.deflection.of(bearing)),
            basis.deflection.reference("span"),
        ),
    ])
}

/// Whether a plank passes [`plank_checks`] under every one of some loads.
pub(super) fn plank_holds(
    plank: &Plank,
    bearing: Length,
    loads: impl IntoIterator<Item = PlankLoad>,
    basis: &Basis,
) -> Result<bool, DesignError> {
    let capacities = Capacities::of(plank, basis)?;
    for load in loads {
        let demands = load.demands(plank, bearing)?;
        let holds =
            Check::within(
                demands.moment.value * basis.factor,
                capacities.bending.value.value,
            ) && Check::within(
                demands.shear.value * basis.factor,
                capacities.shear.value.value,
            ) && Check::within(demands.deflection.value, basis.deflection.of(bearing).value);
        if !holds {
            return Ok(false);
        }
    }
    Ok(true)
}
