//! The part of debris.

use crate::load::case::{LoadPart, Outside, WaterCase, WaterLoad};
use crate::load::reference::seen;
use crate::load::{Debris, Impact, LoadError};
use crate::quantity::Velocity;

pub(super) fn add(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    match (case.debris, case.velocity) {
        (None, _) => load.miss(LoadPart::Debris, "nothing is stated about debris"),
        (Some(Debris::None), _) => load.leave_out(LoadPart::Debris, "no debris is stated"),
        (Some(Debris::Extreme), _) => {
            load.leave_out(
                LoadPart::Debris,
                "no barrier is designed for extreme debris",
            );
            load.outside.push(Outside::ExtremeDebris);
        }
        (Some(Debris::Special), _) => {
            load.impact = Some(Impact::special());
            load.cite(LoadPart::Debris, seen(Impact::SPECIAL_SOURCE));
        }
        (Some(Debris::Normal), None) => load.miss(
            LoadPart::Debris,
            "the force of debris depends on the velocity, which is not stated",
        ),
        (Some(Debris::Normal), Some(velocity)) => normal_debris(case, velocity, load)?,
    }
    Ok(())
}

fn normal_debris(
    case: &WaterCase,
    velocity: Velocity,
    load: &mut WaterLoad,
) -> Result<(), LoadError> {
    load.impact = Some(Impact::on_a_square_foot(case.impact.force(velocity)?));
    load.cite(LoadPart::Debris, case.impact.reference());
    Ok(())
}
