//! One plank between two posts: what the water asks of it.

use super::check::{Check, LoadCase};
use super::member::{Member, MemberCapacity, MemberDemand};
use super::{Basis, DesignError, Plank};
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

    fn demand(self, plank: &Plank, bearing: Length) -> Result<MemberDemand, BeamError> {
        let bent = self.response(plank, bearing, Strikes::Middle)?;
        let mut shear = bent.greatest_shear().value;
        if self.blow.is_some() {
            let sheared = self.response(plank, bearing, Strikes::BesidePost)?;
            shear = shear.max(sheared.greatest_shear().value);
        }
        Ok(MemberDemand {
            moment: bent.greatest_moment().value,
            shear,
            deflection: bent.greatest_deflection().value,
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
    let member = Member {
        name,
        section: &plank.section,
        material: &plank.material,
        length: bearing,
        measure: "span",
    };
    member.checks(load.demand(plank, bearing)?, basis, case)
}

/// Whether a plank passes [`plank_checks`] under every one of some loads.
pub(super) fn plank_holds(
    plank: &Plank,
    bearing: Length,
    loads: impl IntoIterator<Item = PlankLoad>,
    basis: &Basis,
) -> Result<bool, DesignError> {
    let capacities = MemberCapacity::of(&plank.section, &plank.material, basis)?;
    for load in loads {
        let demands = load.demand(plank, bearing)?;
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
