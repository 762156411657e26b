//! What a raster of water answers.

use super::{Candidate, RasterRemark};
use crate::quantity::{AnnualChance, Length};
use crate::terrain::{CellReading, Raster};

/// The level from a raster of water, and what is to be said of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RasterAnswer {
    /// The level; `None` where the raster has no water.
    pub candidate: Option<Candidate>,
    /// What a reader has to know, with or without a level.
    pub remarks: Vec<RasterRemark>,
}

/// The wet value at a place, and how it was read; else the answer without one.
pub(super) fn wet(
    reading: CellReading,
    raster: &Raster,
    chance: AnnualChance,
) -> Result<(Length, &'static str, Vec<RasterRemark>), RasterAnswer> {
    let without = |remark| {
        Err(RasterAnswer {
            candidate: None,
            remarks: vec![remark],
        })
    };
    let raster = raster.name().to_owned();
    match reading {
        CellReading::Between(value) => {
            Ok((value, "bilinear between four wet cell centres", Vec::new()))
        }
        CellReading::AtEdge(value) => Ok((
            value,
            "the wet cell that holds the place, at the wet/dry edge",
            vec![RasterRemark::AtWetDryEdge { raster, chance }],
        )),
        CellReading::Void { beside_value } => without(RasterRemark::NoWater {
            raster,
            chance,
            beside_water: beside_value,
        }),
        CellReading::Outside => without(RasterRemark::DoesNotReach { raster, chance }),
    }
}
