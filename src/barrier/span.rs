//! One plank between two posts: what the water asks of it, and how far it can reach.

use super::check::{Amount, Check, LoadCase};
use super::{Basis, Plank, bending_capacity, shear_capacity};
use crate::beam::{Beam, BeamError, LinearLoad, Response};
use crate::quantity::unit::Force;
use crate::quantity::{Length, LineLoad};

/// The load on one plank: the water over its whole length, and debris that strikes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlankLoad {
    /// Water on each unit of length.
    pub water: LineLoad,
    /// A blow in the middle of the span.
    pub blow: Option<Blow>,
}

/// A force spread over a length of a plank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blow {
    /// The force that one plank takes.
    pub force: Force,
    /// The length it is spread over.
    pub spread: Length,
}

impl PlankLoad {
    /// A plank of `bearing` length under this load, times `factor`.
    ///
    /// The blow stands in the middle, where it bends the plank most; its shear is taken with
    /// the blow there as well as with the blow beside a post, whichever is greater.
    fn response(
        self,
        plank: &Plank,
        bearing: Length,
        factor: f64,
        blow_at: Length,
    ) -> Result<Response, BeamError> {
        let rigidity = plank.material.modulus * plank.section.second_moment;
        let zero = Length::default();
        let mut beam = Beam::simple(bearing, rigidity).with_load(LinearLoad::uniform(
            zero,
            bearing,
            self.water * factor,
        ));
        if let Some(blow) = self.blow {
            let half = (blow.spread / 2.0).min(bearing / 2.0);
            let middle = blow_at.max(half).min(bearing - half);
            beam = beam.with_load(LinearLoad::uniform(
                middle - half,
                middle + half,
                blow.force * factor / (half * 2.0),
            ));
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
/// [`BeamError`] where the length or the plank's rigidity is not more than nothing.
pub fn plank_checks(
    plank: &Plank,
    name: &str,
    bearing: Length,
    load: PlankLoad,
    basis: &Basis,
    case: LoadCase,
) -> Result<[Check; 3], BeamError> {
    let zero = Length::default();
    let middle = bearing / 2.0;
    let factored = load.response(plank, bearing, basis.factor, middle)?;
    let at_post = load.response(plank, bearing, basis.factor, zero)?;
    let unfactored = load.response(plank, bearing, 1.0, middle)?;
    let bending = bending_capacity(&plank.section, &plank.material, basis.strength);
    let shear = shear_capacity(&plank.section, &plank.material, basis.strength);
    let greatest_shear = factored.greatest_shear().value.max(at_post.greatest_shear().value);
    let check = |what, demand, capacity, reference: &str| Check {
        part: name.to_owned(),
        what,
        case,
        demand,
        capacity,
        reference: reference.to_owned(),
    };
    Ok([
        check(
            "bending",
            Amount::Moment(factored.greatest_moment().value),
            Amount::Moment(bending.value),
            &format!("{}; {}", basis.reference, bending.reference),
        ),
        check(
            "shear",
            Amount::Force(greatest_shear),
            Amount::Force(shear.value),
            &format!("{}; {}", basis.reference, shear.reference),
        ),
        check(
            "deflection",
            Amount::Deflection(unfactored.greatest_deflection().value),
            Amount::Deflection(basis.deflection.of(bearing)),
            &format!(
                "beam on two supports, no load factor; limit L/{} ({})",
                basis.deflection.part_of_span, basis.deflection.citation
            ),
        ),
    ])
}
