//! The part of still water.

use crate::load::case::{LoadPart, WaterCase, WaterLoad};
use crate::load::error::not_negative;
use crate::load::reference::seen;
use crate::load::{LoadError, PressureProfile, WATER_WEIGHT_SOURCE};
use crate::quantity::Length;

pub(super) fn add(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let extra = not_negative(
        "extra load depth",
        case.extra_load_depth.unwrap_or_default(),
    )?;
    let weight = case.salinity.specific_weight();
    let surface = load.surface(case);
    if load.breaking_wave.is_some() {
        // The wave's load reaches down to the ground and no further.
        load.still =
            PressureProfile::still_water(surface, weight).clipped(Length::default(), case.buried());
        load.leave_out(
            LoadPart::StillWater,
            "the load of breaking waves includes it above the ground",
        );
        if extra > Length::default() {
            load.leave_out(
                LoadPart::ExtraDepth,
                "it belongs to still water, which the load of breaking waves includes",
            );
        }
    } else if surface > case.foot() {
        load.still = PressureProfile::still_water_down_to(case.foot(), surface + extra, weight);
        if extra > Length::default() {
            load.cite(LoadPart::ExtraDepth, seen("ASCE 7-98 and 7-02 5.3.3.2: 1 ft is added to the design depth of surfaces exposed to free water; here the depth that is stated"));
        }
    } else {
        load.leave_out(LoadPart::StillWater, "the water does not reach the wall");
        if extra > Length::default() {
            load.leave_out(LoadPart::ExtraDepth, "the water does not reach the wall");
        }
    }
    if extra <= Length::default() {
        load.leave_out(LoadPart::ExtraDepth, "none is asked for");
    }
    if !load.still.is_empty() {
        load.cite(LoadPart::StillWater, seen("ASCE 7-10 5.4.2: p = γ·h"));
        load.cite(LoadPart::StillWater, seen(WATER_WEIGHT_SOURCE));
    }
    Ok(())
}
