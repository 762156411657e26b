//! The part of breaking waves.

use crate::load::case::{
    BreakingWaves, LoadPart, Outside, WaterCase, WaterLoad, WaveAction, WaveLevel,
};
use crate::load::reference::{from_memory, seen};
use crate::load::wave::source;
use crate::load::{
    BreakingWave, LoadError, RiskCategory, WATER_WEIGHT_SOURCE, stillwater_depth_under_crest,
};
use crate::quantity::Length;

pub(super) fn add(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let waves = match case.waves {
        None => {
            load.miss(LoadPart::Wave, "nothing is stated about waves");
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
        Some(WaveAction::BreakingWithout { missing }) => {
            load.miss(LoadPart::Wave, missing);
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
