//! Putting the parts of a load together.

mod debris;
mod flow;
mod soil;
mod still_water;
mod wave;

use super::{LoadPart, LoadReference, NotIncluded, WaterCase, WaterLoad};
use crate::load::LoadError;
use crate::load::error::height;
use crate::quantity::Length;
use crate::statement::Citation;

/// The parts in the order of the trail.
pub(super) fn load_of(case: &WaterCase) -> Result<WaterLoad, LoadError> {
    height("depth over the sill", case.depth)?;
    height("height of the sill over the ground", case.sill_above_ground)?;
    let mut load = WaterLoad::default();
    wave::add(case, &mut load)?;
    still_water::add(case, &mut load)?;
    soil::add(case, &mut load)?;
    flow::add(case, &mut load)?;
    debris::add(case, &mut load)?;
    Ok(load)
}

impl WaterCase {
    /// Height of the ground over the sill.
    fn ground(&self) -> Length {
        -self.sill_above_ground
    }

    /// Height over the sill of the lowest place that the water presses.
    fn foot(&self) -> Length {
        self.ground().min(Length::default())
    }

    /// Height of the sill under the ground, zero where it lies over it.
    fn buried(&self) -> Length {
        self.ground().max(Length::default())
    }
}

impl WaterLoad {
    fn cite(&mut self, part: LoadPart, citation: Citation) {
        self.references.push(LoadReference { part, citation });
    }

    fn leave_out(&mut self, part: LoadPart, reason: &'static str) {
        self.not_included.push(NotIncluded {
            part,
            reason,
            may_act: false,
        });
    }

    /// A part that may act, but nobody stated what it depends on.
    fn miss(&mut self, part: LoadPart, reason: &'static str) {
        self.not_included.push(NotIncluded {
            part,
            reason,
            may_act: true,
        });
    }

    /// Height of the still water's surface over the sill, without waves.
    fn surface(&self, case: &WaterCase) -> Length {
        self.breaking_wave
            .map_or(case.depth, |wave| wave.stillwater())
    }
}
