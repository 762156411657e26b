//! The part of saturated soil.

use crate::load::case::{LoadPart, Outside, WaterCase, WaterLoad};
use crate::load::reference::from_memory;
use crate::load::{LoadError, SoilGroup, saturated_soil};
use crate::quantity::Length;

pub(super) fn add(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let buried = case.buried();
    match case.soil {
        _ if buried <= Length::default() => {
            load.leave_out(LoadPart::Soil, "the sill does not lie below the ground");
        }
        None => load.miss(LoadPart::Soil, "no soil is stated"),
        Some(_) if buried > load.surface(case) => {
            load.leave_out(LoadPart::Soil, "the water stands below the ground");
            load.outside.push(Outside::UnsaturatedSoil);
        }
        Some(group) => {
            load.soil = saturated_soil(buried, group, case.salinity.specific_weight())?;
            load.cite(
                LoadPart::Soil,
                from_memory("FEMA P-259 chapter 4: (S − γ)·D²/2 on top of still water"),
            );
            load.cite(LoadPart::Soil, from_memory(SoilGroup::SOURCE));
        }
    }
    Ok(())
}
