//! The load of still water, right and wrong.

use super::formula::{Formula, Load, Quantity, other, weight};
use crate::load::{Hydrostatic, Salinity};
use crate::quantity::LengthUnit;
use crate::quantity::unit::{Length, meter};
use crate::review::{LoadSlip, STILL_REFERENCE};

/// The units that a number without its square may have been in.
pub(super) const UNITS: [LengthUnit; 2] = [LengthUnit::Foot, LengthUnit::Metre];

/// The right formula, which is the assessment's own, and its slips.
pub(super) fn formula<'a>(quantity: Quantity, salinity: Salinity) -> Formula<'a> {
    let (other, name) = other(salinity);
    let mut slips = slips(quantity, weight(salinity));
    slips.push((LoadSlip::OtherSalinity(name), right(quantity, other)));
    Formula {
        right: right(quantity, salinity),
        slips,
        reference: STILL_REFERENCE,
    }
}

fn right<'a>(quantity: Quantity, salinity: Salinity) -> Load<'a> {
    Box::new(move |depth| {
        let depth = Length::new::<meter>(depth);
        let load = Hydrostatic::of_depth(depth, salinity.specific_weight());
        match quantity {
            Quantity::Pressure => load.pressure.value,
            Quantity::ForcePerWidth | Quantity::Force => load.force.value,
            Quantity::MomentPerWidth => load.moment.value,
        }
    })
}

/// `gamma` in N/m³. Where a depth stands for its square, one unit of its own takes the place of
/// the other depth: the number is right in that unit alone.
fn slips<'a>(quantity: Quantity, gamma: f64) -> Vec<(LoadSlip, Load<'a>)> {
    let in_units = |slip: fn(LengthUnit) -> LoadSlip, of: fn(f64, f64, f64) -> f64| {
        UNITS.map(move |unit| {
            let one = unit.length(1.0).value;
            let load: Load<'a> = Box::new(move |h| of(gamma, h, one));
            (slip(unit), load)
        })
    };
    match quantity {
        Quantity::Pressure => vec![(LoadSlip::MeanPressure, Box::new(move |h| gamma * h / 2.0))],
        Quantity::ForcePerWidth | Quantity::Force => {
            let mut slips: Vec<(LoadSlip, Load<'a>)> =
                vec![(LoadSlip::NotHalved, Box::new(move |h| gamma * h * h))];
            slips.extend(in_units(LoadSlip::DepthForSquare, |gamma, h, one| {
                gamma * h * one / 2.0
            }));
            slips.extend(in_units(LoadSlip::PressureForForce, |gamma, h, one| {
                gamma * h * one
            }));
            slips
        }
        Quantity::MomentPerWidth => {
            let mut slips: Vec<(LoadSlip, Load<'a>)> = vec![
                (
                    LoadSlip::MomentNotHalved,
                    Box::new(move |h| gamma * h * h * h / 3.0),
                ),
                (
                    LoadSlip::ArmAtHalfDepth,
                    Box::new(move |h| gamma * h * h * h / 4.0),
                ),
            ];
            slips.extend(in_units(LoadSlip::SquareForCube, |gamma, h, one| {
                gamma * h * h * one / 6.0
            }));
            slips
        }
    }
}
