//! What no check covers is listed, so that nobody takes it for checked.

use super::{design, feet, inches, kit, opening, rules, rules_of};
use sillmark::barrier::{BarrierDesign, Open, design_barrier};
use sillmark::load::{
    Behind, BreakingWaves, LoadZone, RiskCategory, Salinity, WaveAction, WaveLevel,
};
use sillmark::quantity::parse_mass_per_length;

fn not_checked(found: &BarrierDesign, part: &str, words: &str) -> bool {
    found.open.iter().any(|open| {
        matches!(open, Open::NotChecked { part: known, what } if known == part && what.contains(words))
    })
}

fn says(found: &BarrierDesign, words: &str) -> bool {
    let units = sillmark::quantity::UnitSystem::Us;
    found
        .open
        .iter()
        .any(|open| open.text(units).contains(words))
}

/// A hollow plank of 6 in by 2 in displaces 62.4·12/144 = 5.2 lb/ft of fresh water and 5.33 of
/// salt water: it floats below that weight.
#[test]
fn planks_that_float_ask_how_they_are_held_down() {
    let task = opening(inches(36.0), feet(2.5));
    for (mass, salinity, floats) in [
        ("2.7 lb/ft", Salinity::Fresh, true),
        ("5.19 lb/ft", Salinity::Fresh, true),
        ("5.22 lb/ft", Salinity::Fresh, false),
        ("5.22 lb/ft", Salinity::Salt, true),
        ("5.4 lb/ft", Salinity::Salt, false),
    ] {
        let mut kit = kit();
        kit.plank.mass_per_length = parse_mass_per_length(mass).unwrap();
        let mut task = task.clone();
        task.water.salinity = salinity;
        let found = design(&task, &kit);
        assert_eq!(says(&found, "held down"), floats, "{mass} {salinity:?}");
    }
}

#[test]
fn plates_and_pockets_are_not_checked() {
    let single = design(&opening(inches(36.0), feet(2.5)), &kit());
    assert!(not_checked(&single, "end post", "pocket"));
    assert!(!not_checked(&single, "intermediate post", "base plate"));
    let double = design(&opening(feet(14.0), feet(2.5)), &kit());
    assert!(not_checked(&double, "intermediate post", "base plate"));
}

/// The figure of the code gives less moment than its force at the stillwater surface.
#[test]
fn the_place_of_a_breaking_wave_is_told() {
    let mut task = opening(feet(14.0), feet(2.5));
    let still = design(&task, &kit());
    assert!(!not_checked(
        &still,
        "intermediate post",
        "stillwater surface"
    ));
    task.water.waves = Some(WaveAction::Breaking(BreakingWaves {
        category: RiskCategory::II,
        level: WaveLevel::Stillwater,
        behind: Behind::Dry,
    }));
    let wave = design(&task, &kit());
    assert!(not_checked(
        &wave,
        "intermediate post",
        "stillwater surface"
    ));
    let load = wave.loads[0].water.breaking_wave.unwrap();
    assert!(load.code_resultant().moment > load.profile().resultant().moment);
}

/// Outside the coastal zones ASCE 7 multiplies flood load by 0.75 beside wind and other loads.
#[test]
fn a_factor_below_one_is_questioned() {
    let task = opening(feet(14.0), feet(2.5));
    let of = |set: &str, zone| {
        let rules = rules_of(set).in_zone(zone);
        design_barrier(&task, &kit(), &rules, None, None)
            .unwrap()
            .unwrap()
    };
    let words = "a factor below 1";
    assert!(says(&of("asce7-16-flood", LoadZone::Other), words));
    assert!(says(&of("asce7-16-flood", LoadZone::Other), "0.75"));
    assert!(!says(&of("asce7-16-flood", LoadZone::Coastal), words));
    assert!(!says(
        &design_barrier(&task, &kit(), &rules(), None, None)
            .unwrap()
            .unwrap(),
        words
    ));
}
