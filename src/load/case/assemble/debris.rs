//! The part of debris.

use crate::load::case::{LoadPart, Outside, WaterCase, WaterLoad};
use crate::load::reference::seen;
use crate::load::{Debris, Impact, LoadError};
use crate::quantity::{Length, Velocity};

pub(super) fn add(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    if !reaches_the_sill(case, load) && case.debris.is_some() {
        load.leave_out(LoadPart::Debris, "the water does not reach the sill");
        return Ok(());
    }
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
        (Some(Debris::Normal), None) => {
            load.miss(
                LoadPart::Debris,
                "the force of debris depends on the velocity, which is not stated",
            );
            load.outside.push(Outside::DebrisWithoutVelocity);
        }
        (Some(Debris::Normal), Some(velocity)) => normal_debris(case, velocity, load)?,
    }
    Ok(())
}

/// Debris strikes at or below the surface, or rides on the waves.
fn reaches_the_sill(case: &WaterCase, load: &WaterLoad) -> bool {
    let surface = load.surface(case);
    load.crest().map_or(surface, |crest| crest.max(surface)) > Length::default()
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
