//! Putting the parts of a load together.

use super::{
    BreakingWaves, LoadPart, LoadReference, NotIncluded, Outside, WaterCase, WaterLoad, WaveAction,
    WaveLevel,
};
use crate::load::error::{height, not_negative};
use crate::load::reference::{common_practice, from_memory, seen};
use crate::load::wave::source;
use crate::load::{
    BreakingWave, Debris, Flow, Impact, LoadError, PressureProfile, RiskCategory, SoilGroup,
    WATER_WEIGHT_SOURCE, fastest_for_velocity_head, saturated_soil, stillwater_depth_under_crest,
};
use crate::quantity::Length;
use crate::quantity::Velocity;
use crate::statement::Citation;

/// The parts in the order of the trail.
pub(super) fn load_of(case: &WaterCase) -> Result<WaterLoad, LoadError> {
    height("depth over the sill", case.depth)?;
    height("height of the sill over the ground", case.sill_above_ground)?;
    let mut load = WaterLoad::default();
    wave(case, &mut load)?;
    still_water(case, &mut load)?;
    soil(case, &mut load)?;
    flow(case, &mut load)?;
    debris(case, &mut load)?;
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
        self.not_included.push(NotIncluded { part, reason });
    }

    /// Height of the still water's surface over the sill, without waves.
    fn surface(&self, case: &WaterCase) -> Length {
        self.breaking_wave
            .map_or(case.depth, |wave| wave.stillwater())
    }
}

fn wave(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let waves = match case.waves {
        None => {
            load.leave_out(LoadPart::Wave, "nothing is stated about waves");
            return Ok(());
        }
        Some(WaveAction::None) => {
            load.leave_out(LoadPart::Wave, "no waves are stated");
            return Ok(());
        }
        Some(WaveAction::NonBreaking) => {
            load.leave_out(LoadPart::Wave, "the stated waves do not break");
            load.outside.push(Outside::NonBreakingWaves);
            return Ok(());
        }
        Some(WaveAction::Breaking(waves)) => waves,
    };
    let over_ground = case.depth + case.sill_above_ground;
    if over_ground <= Length::default() {
        load.leave_out(
            LoadPart::Wave,
            "the water does not stand over the ground before the wall",
        );
        return Ok(());
    }
    let stillwater_depth = match waves.level {
        WaveLevel::Stillwater => over_ground,
        WaveLevel::Crest => stillwater_depth_under_crest(over_ground),
    };
    let wave = BreakingWave {
        stillwater_depth,
        sill_above_ground: case.sill_above_ground,
        category: waves.category,
        weight: case.salinity.specific_weight(),
        behind: waves.behind,
    }
    .checked()?;
    load.wave = wave.profile();
    load.breaking_wave = Some(wave);
    cite_wave(load, waves);
    if case.buried() > Length::default() {
        load.outside.push(Outside::WaveOnBuriedOpening);
    }
    Ok(())
}

fn cite_wave(load: &mut WaterLoad, waves: BreakingWaves) {
    load.cite(LoadPart::Wave, seen(source::FORCE));
    load.cite(LoadPart::Wave, from_memory(source::SHAPE));
    load.cite(
        LoadPart::Wave,
        match waves.category {
            RiskCategory::III => seen(source::COEFFICIENT),
            _ => from_memory(source::COEFFICIENT),
        },
    );
    load.cite(LoadPart::Wave, seen(WATER_WEIGHT_SOURCE));
    if waves.level == WaveLevel::Crest {
        load.cite(LoadPart::Wave, seen(source::STILLWATER));
    }
}

fn still_water(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
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
    }
    if case.extra_load_depth.is_none() {
        load.leave_out(LoadPart::ExtraDepth, "none is asked for");
    }
    if !load.still.is_empty() {
        load.cite(LoadPart::StillWater, seen("ASCE 7-10 5.4.2: p = γ·h"));
        load.cite(LoadPart::StillWater, seen(WATER_WEIGHT_SOURCE));
    }
    Ok(())
}

fn soil(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let buried = case.buried();
    match case.soil {
        _ if buried <= Length::default() => {
            load.leave_out(LoadPart::Soil, "the sill does not lie below the ground");
        }
        None => load.leave_out(LoadPart::Soil, "no soil is stated"),
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

fn flow(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let Some(velocity) = case.velocity else {
        load.leave_out(LoadPart::Flow, "no velocity is stated");
        return Ok(());
    };
    let flow = Flow {
        velocity,
        ground: case.ground(),
        surface: load.surface(case),
        salinity: case.salinity,
        head_coefficient: case.head_coefficient,
        wall_width: case.wall_width,
    };
    let found = match flow.load() {
        Err(LoadError::DragNeedsWidth(_)) => {
            load.leave_out(
                LoadPart::Flow,
                "drag depends on the width of the wall, which is not stated",
            );
            load.outside.push(Outside::DragWithoutWidth);
            return Ok(());
        }
        found => found?,
    };
    if found.profile.is_empty() {
        load.leave_out(LoadPart::Flow, "no water flows over the ground at the wall");
        return Ok(());
    }
    if velocity > fastest_for_velocity_head() {
        load.outside.push(Outside::FasterThanVelocityHead);
    }
    for citation in &found.references {
        load.cite(LoadPart::Flow, citation.clone());
    }
    if load.breaking_wave.is_some() {
        load.cite(
            LoadPart::Flow,
            common_practice("added to breaking waves in full, the safe side"),
        );
    }
    load.flow = found.profile.clone();
    load.flow_method = Some(found);
    Ok(())
}

fn debris(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    match (case.debris, case.velocity) {
        (None, _) => load.leave_out(LoadPart::Debris, "nothing is stated about debris"),
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
        (Some(Debris::Normal), None) => load.leave_out(
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
