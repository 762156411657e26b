//! One case of water: which parts it has, and what it says of those it has not.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use proptest::prelude::*;
use sillmark::load::{
    Behind, BreakingWaves, Debris, Impact, LoadPart, Outside, RiskCategory, Salinity, SoilGroup,
    WaterCase, WaterLoad, WaveAction, WaveLevel,
};
use sillmark::quantity::Pressure;
use sillmark::quantity::unit::{foot, in_pounds_per_foot, pound_force, pound_per_square_foot};
use sillmark::statement::Confidence;

use super::{feet, feet_per_second};

fn still() -> WaterCase {
    WaterCase::still(feet(3.0), feet(0.5), Salinity::Fresh)
}

fn breaking(level: WaveLevel) -> WaveAction {
    WaveAction::Breaking(BreakingWaves {
        category: RiskCategory::II,
        level,
        behind: Behind::Dry,
    })
}

fn on_barrier(load: &WaterLoad) -> f64 {
    in_pounds_per_foot(load.total().clipped(feet(0.0), feet(3.0)).resultant().force)
}

fn left_out(load: &WaterLoad, part: LoadPart) -> Option<&'static str> {
    let absent = load.not_included.iter().find(|absent| absent.part == part);
    absent.map(|absent| absent.reason)
}

fn cited(load: &WaterLoad, part: LoadPart) -> bool {
    load.references
        .iter()
        .any(|reference| reference.part == part)
}

#[test]
fn still_water_alone_names_all_that_is_absent() {
    let load = still().load().unwrap();
    assert_abs_diff_eq!(on_barrier(&load), 280.8, epsilon = 1e-9);
    // From the ground half a foot below the sill.
    let whole = load.total().resultant().force;
    assert_abs_diff_eq!(
        in_pounds_per_foot(whole),
        62.4 * 3.5 * 3.5 / 2.0,
        epsilon = 1e-9
    );
    for part in [
        LoadPart::Flow,
        LoadPart::Wave,
        LoadPart::Debris,
        LoadPart::Soil,
        LoadPart::ExtraDepth,
    ] {
        assert!(left_out(&load, part).is_some(), "{part}");
        assert!(!cited(&load, part), "{part}");
    }
    assert!(cited(&load, LoadPart::StillWater));
    assert!(load.outside.is_empty());
    assert_eq!(load.impact, None);
}

#[test]
fn the_extra_foot_is_a_load_depth() {
    let case = WaterCase {
        extra_load_depth: Some(feet(1.0)),
        ..still()
    };
    let load = case.load().unwrap();
    // The triangle of 4 ft, cut off at the 3 ft that the barrier is high.
    assert_abs_diff_eq!(on_barrier(&load), 62.4 * (16.0 - 1.0) / 2.0, epsilon = 1e-9);
    assert!(cited(&load, LoadPart::ExtraDepth));
    assert!(
        WaterCase {
            extra_load_depth: Some(feet(-1.0)),
            ..still()
        }
        .load()
        .is_err()
    );
}

#[test]
fn the_extra_foot_does_not_wet_a_dry_wall() {
    let dry = WaterCase {
        extra_load_depth: Some(feet(1.0)),
        ..WaterCase::still(feet(-0.6), feet(0.5), Salinity::Fresh)
    };
    let load = dry.load().unwrap();
    assert!(load.total().is_empty());
    assert!(left_out(&load, LoadPart::StillWater).is_some());
}

#[test]
fn flow_adds_its_head_on_the_whole_wetted_height() {
    let case = WaterCase {
        velocity: Some(feet_per_second(5.0)),
        ..still()
    };
    let load = case.load().unwrap();
    let head = 1.25 * 25.0 / 64.4;
    assert_abs_diff_eq!(on_barrier(&load), 280.8 + 62.4 * head * 3.0, epsilon = 1e-9);
    let below = load
        .flow
        .pressure_at(feet(-0.4))
        .get::<pound_per_square_foot>();
    assert_abs_diff_eq!(below, 62.4 * head, epsilon = 1e-9);
    assert!(cited(&load, LoadPart::Flow) && left_out(&load, LoadPart::Flow).is_none());
}

#[test]
fn fast_water_is_outside_with_and_without_a_width() {
    let fast = WaterCase {
        velocity: Some(feet_per_second(12.0)),
        ..still()
    };
    let bare = fast.load().unwrap();
    assert_eq!(bare.outside, [Outside::DragWithoutWidth]);
    assert!(cited(&bare, LoadPart::Flow) && left_out(&bare, LoadPart::Flow).is_none());
    let wide = WaterCase {
        wall_width: Some(feet(35.0)),
        ..fast
    }
    .load()
    .unwrap();
    assert_eq!(wide.outside, [Outside::FasterThanVelocityHead]);
    // Without a width the greatest coefficient is taken, not the drag left out.
    assert_abs_diff_eq!(
        on_barrier(&bare),
        280.8 + 2.0 * 1.94 * 144.0 / 2.0 * 3.0,
        epsilon = 1e-9
    );
    assert!(on_barrier(&wide) < on_barrier(&bare));
    // A coefficient below the least is an error all the same.
    assert!(
        WaterCase {
            head_coefficient: 1.0,
            ..fast
        }
        .load()
        .is_err()
    );
}

#[test]
fn breaking_waves_include_still_water() {
    let load = WaterCase {
        waves: Some(breaking(WaveLevel::Stillwater)),
        ..still()
    }
    .load()
    .unwrap();
    assert!(load.still.is_empty());
    assert!(
        left_out(&load, LoadPart::StillWater)
            .unwrap()
            .contains("include")
    );
    let wave = load.breaking_wave.unwrap();
    assert_abs_diff_eq!(wave.stillwater_depth.get::<foot>(), 3.5, epsilon = 1e-9);
    assert_relative_eq!(
        load.total().resultant().force.value,
        wave.code_force().value,
        max_relative = 0.01
    );
    // 3 + 1.2 · 3.5 over the sill.
    assert_abs_diff_eq!(load.crest().unwrap().get::<foot>(), 7.2, epsilon = 1e-9);
    assert!(load.outside.is_empty());
    let over = load.outside_with_top(feet(3.0));
    assert!(matches!(over.as_slice(), [Outside::WaveOverTop { .. }]));
    assert!(load.outside_with_top(feet(7.3)).is_empty());
}

#[test]
fn a_level_of_crests_is_cut_down_to_still_water() {
    let case = WaterCase {
        waves: Some(breaking(WaveLevel::Crest)),
        velocity: Some(feet_per_second(5.0)),
        ..still()
    };
    let load = case.load().unwrap();
    let depth = 0.65 * 3.5;
    let wave = load.breaking_wave.unwrap();
    assert_abs_diff_eq!(wave.stillwater_depth.get::<foot>(), depth, epsilon = 1e-9);
    // The flow reaches up to the still water too, not to the crests.
    let above = load.flow.pressure_at(feet(depth - 0.5 + 0.01));
    assert_eq!(above, Pressure::default());
    let unsure = |part| {
        load.references
            .iter()
            .any(|each| each.part == part && each.citation.confidence == Confidence::CommonPractice)
    };
    assert!(
        unsure(LoadPart::Flow),
        "that flow and wave add has no source"
    );
}

#[test]
fn waves_that_do_not_break_are_outside() {
    let load = WaterCase {
        waves: Some(WaveAction::NonBreaking),
        ..still()
    }
    .load()
    .unwrap();
    assert_eq!(load.outside, [Outside::NonBreakingWaves]);
    assert_abs_diff_eq!(on_barrier(&load), 280.8, epsilon = 1e-9);
    let none = WaterCase {
        waves: Some(WaveAction::None),
        ..still()
    }
    .load()
    .unwrap();
    assert!(none.outside.is_empty());
}

#[test]
fn waves_do_not_reach_a_dry_wall() {
    let dry = WaterCase {
        waves: Some(breaking(WaveLevel::Stillwater)),
        ..WaterCase::still(feet(-1.0), feet(0.5), Salinity::Salt)
    };
    let load = dry.load().unwrap();
    assert!(load.total().is_empty() && load.crest().is_none());
    assert!(left_out(&load, LoadPart::Wave).is_some());
}

fn basement(depth: f64) -> WaterCase {
    WaterCase {
        soil: Some(SoilGroup::CleanSandOrGravel),
        ..WaterCase::still(feet(depth), feet(-4.0), Salinity::Fresh)
    }
}

#[test]
fn soil_presses_an_opening_below_the_ground() {
    // FEMA P-259 formula (from memory): H 5 ft, D 4 ft, S 75 pcf.
    let load = basement(5.0).load().unwrap();
    assert_abs_diff_eq!(
        in_pounds_per_foot(load.total().resultant().force),
        880.8,
        epsilon = 1e-9
    );
    // Flow presses above the ground only.
    let flowing = WaterCase {
        velocity: Some(feet_per_second(5.0)),
        ..basement(5.0)
    }
    .load()
    .unwrap();
    let flow = flowing.flow.resultant();
    assert_abs_diff_eq!(flow.height.get::<foot>(), 4.5, epsilon = 1e-9);
    let none = WaterCase {
        soil: None,
        ..basement(5.0)
    }
    .load()
    .unwrap();
    assert_eq!(left_out(&none, LoadPart::Soil), Some("no soil is stated"));
}

#[test]
fn soil_above_the_water_is_outside() {
    let load = basement(3.0).load().unwrap();
    assert_eq!(load.outside, [Outside::UnsaturatedSoil]);
    assert!(load.soil.is_empty());
    assert!(basement(4.0).load().unwrap().outside.is_empty());
}

#[test]
fn waves_over_an_opening_below_the_ground_keep_the_water_in_the_ground() {
    let load = WaterCase {
        waves: Some(breaking(WaveLevel::Stillwater)),
        ..basement(6.0)
    }
    .load()
    .unwrap();
    assert_eq!(load.outside, [Outside::WaveOnBuriedOpening]);
    // From the sill to the ground the water of 6 ft, 4 ft of it in the ground.
    let still = in_pounds_per_foot(load.still.resultant().force);
    assert_abs_diff_eq!(still, 62.4 * (36.0 - 4.0) / 2.0, epsilon = 1e-9);
    assert_eq!(load.wave.pressure_at(feet(3.9)), Pressure::default());
}

#[test]
fn debris_by_its_kind() {
    let with = |debris, velocity: Option<f64>| {
        let case = WaterCase {
            debris: Some(debris),
            velocity: velocity.map(feet_per_second),
            ..still()
        };
        case.load().unwrap()
    };
    let normal = with(Debris::Normal, Some(5.0));
    let Some(Impact::Patch { force, .. }) = normal.impact else {
        panic!("{:?}", normal.impact);
    };
    assert_abs_diff_eq!(force.get::<pound_force>(), 310.6, epsilon = 0.05);
    assert!(cited(&normal, LoadPart::Debris));
    let unknown = with(Debris::Normal, None);
    assert_eq!(unknown.impact, None);
    assert!(
        left_out(&unknown, LoadPart::Debris)
            .unwrap()
            .contains("velocity")
    );
    assert_eq!(with(Debris::Special, None).impact, Some(Impact::special()));
    assert_eq!(
        with(Debris::Extreme, None).outside,
        [Outside::ExtremeDebris]
    );
    assert!(with(Debris::None, None).outside.is_empty());
    // Debris is no part of the total.
    let plain = WaterCase {
        velocity: Some(feet_per_second(5.0)),
        ..still()
    }
    .load()
    .unwrap();
    assert_abs_diff_eq!(on_barrier(&normal), on_barrier(&plain), epsilon = 1e-12);
}

#[test]
fn debris_strikes_only_what_the_water_reaches() {
    let low = WaterCase {
        debris: Some(Debris::Special),
        ..WaterCase::still(feet(-0.1), feet(2.0), Salinity::Salt)
    };
    let load = low.load().unwrap();
    assert_eq!(load.impact, None);
    assert!(left_out(&load, LoadPart::Debris).is_some());
    let rough = WaterCase {
        waves: Some(breaking(WaveLevel::Stillwater)),
        ..low
    };
    assert_eq!(rough.load().unwrap().impact, Some(Impact::special()));
}

#[test]
fn what_is_no_number_is_refused() {
    for wrong in [f64::NAN, f64::INFINITY] {
        assert!(
            WaterCase {
                depth: feet(wrong),
                ..still()
            }
            .load()
            .is_err()
        );
        assert!(
            WaterCase {
                sill_above_ground: feet(wrong),
                ..still()
            }
            .load()
            .is_err()
        );
        assert!(
            WaterCase {
                extra_load_depth: Some(feet(wrong)),
                ..still()
            }
            .load()
            .is_err()
        );
        assert!(
            WaterCase {
                velocity: Some(feet_per_second(wrong)),
                ..still()
            }
            .load()
            .is_err()
        );
    }
}

proptest! {
    #[test]
    fn the_load_grows_with_the_depth(
        depth in -1.0..8.0_f64,
        more in 0.01..2.0_f64,
        sill in -3.0..3.0_f64,
        velocity in prop::option::of(0.0..10.0_f64),
        waves in prop::option::of(prop::sample::select(vec![WaveLevel::Stillwater, WaveLevel::Crest])),
    ) {
        let force = |depth| {
            let case = WaterCase {
                velocity: velocity.map(feet_per_second),
                waves: waves.map(breaking),
                ..WaterCase::still(feet(depth), feet(sill), Salinity::Salt)
            };
            case.load().unwrap().total().resultant().force
        };
        prop_assert!(force(depth + more) >= force(depth));
    }

    /// Every part is in the load with its source, or left out with the reason.
    #[test]
    fn no_part_is_passed_over(
        depth in -1.0..8.0_f64,
        sill in -3.0..3.0_f64,
        velocity in prop::option::of(0.0..15.0_f64),
        width in prop::option::of(1.0..100.0_f64),
        soil in prop::option::of(Just(SoilGroup::SoftClay)),
        debris in prop::option::of(prop::sample::select(vec![Debris::None, Debris::Normal, Debris::Special, Debris::Extreme])),
        extra in prop::option::of(Just(1.0)),
        waves in prop::option::of(prop::sample::select(vec![WaveLevel::Stillwater, WaveLevel::Crest])),
    ) {
        let case = WaterCase {
            velocity: velocity.map(feet_per_second),
            wall_width: width.map(feet),
            soil,
            debris,
            extra_load_depth: extra.map(feet),
            waves: waves.map(breaking),
            ..WaterCase::still(feet(depth), feet(sill), Salinity::Salt)
        };
        let load = case.load().unwrap();
        for part in [LoadPart::StillWater, LoadPart::ExtraDepth, LoadPart::Flow, LoadPart::Soil, LoadPart::Wave, LoadPart::Debris] {
            prop_assert!(cited(&load, part) || left_out(&load, part).is_some(), "{part}");
        }
        prop_assert_eq!(cited(&load, LoadPart::Flow), !load.flow.is_empty());
        prop_assert_eq!(cited(&load, LoadPart::Soil), !load.soil.is_empty());
        prop_assert_eq!(cited(&load, LoadPart::Wave), !load.wave.is_empty());
        prop_assert_eq!(cited(&load, LoadPart::StillWater), !load.still.is_empty());
        prop_assert_eq!(cited(&load, LoadPart::Debris), load.impact.is_some());
    }
}
