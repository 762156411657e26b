//! Water of every kind before a barrier.

use super::{about, check, design, feet, foot_pounds, inches, kit, opening, pounds, rules};
use sillmark::barrier::{DesignError, LoadCase, Shortfall, design_barrier};
use sillmark::load::{
    Behind, BreakingWaves, Debris, RiskCategory, SoilGroup, WaveAction, WaveLevel,
};
use sillmark::quantity::Length;
use sillmark::quantity::unit::{Velocity, foot, foot_per_second, in_pounds_per_foot, meter};

/// Water 4 ft deep before 2.5 ft of barrier: 62.4·(4 + 1.5)/2·2.5 = 429 lb/ft on it, the lowest
/// plank 62.4·3.75·0.5 = 117 lb/ft.
#[test]
fn water_above_the_barrier() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.water.depth = feet(4.0);
    let found = design(&task, &kit());
    let load = found.load(LoadCase::DesignLevel).unwrap();
    about(in_pounds_per_foot(load.on_barrier.resultant().force), 429.0);
    let over = |shortfall: &Shortfall| matches!(shortfall, Shortfall::Overtopped { .. });
    assert!(found.shortfalls.iter().any(over));
    let lowest = found
        .checks()
        .find(|check| check.what == "bending" && check.case == LoadCase::DesignLevel);
    about(
        foot_pounds(lowest.unwrap().demand),
        117.0 * (33.5_f64 / 12.0).powi(2) / 8.0,
    );
    // As deep as the barrier is high is not over it, in whatever unit that was written.
    let mut full = opening(inches(36.0), feet(2.5));
    full.water.depth = Length::new::<meter>(0.762);
    assert!(!design(&full, &kit()).shortfalls.iter().any(over));
}

/// Nothing wets the barrier at the design level; the case of water at its top still counts.
#[test]
fn dry_at_the_design_level() {
    let mut task = opening(feet(14.0), feet(2.5));
    task.water.depth = feet(-0.5);
    task.water.debris = Some(Debris::Special);
    let found = design(&task, &kit());
    let dry = found
        .checks()
        .filter(|check| check.case == LoadCase::DesignLevel);
    for check in dry {
        // Debris floats on the water, which stays below the sill.
        assert!(check.demand.in_si() == 0.0, "{check:?}");
    }
    about(
        pounds(check(&found, "plank 1", "shear").demand),
        (70.2 + 50.0) * 81.375 / 12.0 / 2.0,
    );
}

/// Special debris: 100 lb/ft on 1 ft, so 50 lb/ft on a plank of 6 in: w = 70.2 + 50; the post
/// between takes 700 lb centred 2 ft up: M = 1,137.5 + 1,400 ft·lb.
#[test]
fn special_debris() {
    let mut task = opening(feet(14.0), feet(2.5));
    task.water.debris = Some(Debris::Special);
    let found = design(&task, &kit());
    let bearing = 81.375_f64 / 12.0;
    about(
        foot_pounds(check(&found, "plank 1", "bending").demand),
        120.2 * bearing.powi(2) / 8.0,
    );
    about(
        foot_pounds(check(&found, "intermediate post", "bending").demand),
        2537.5,
    );
}

/// Normal debris at 5 ft/s: 1,000·5/(32.2·0.5) = 310.559 lb on 1 ft², half of it on a plank.
/// Flow: 62.4·0.485248 = 30.2795 lb/ft², 15.1398 lb/ft on a plank.
///
/// In the middle of L = 33.5 in: M = 85.3398·2.79167²/8 + 155.28·(2.79167/4 − 1/8) = 83.136 +
/// 88.963; beside the post V = 85.3398·2.79167/2 + 155.28·(1 − 0.5/2.79167) = 119.120 + 127.468.
#[test]
fn normal_debris_on_a_plank() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.water.velocity = Some(Velocity::new::<foot_per_second>(5.0));
    task.water.debris = Some(Debris::Normal);
    let found = design(&task, &kit());
    about(
        foot_pounds(check(&found, "plank 1", "bending").demand),
        172.099,
    );
    about(pounds(check(&found, "plank 1", "shear").demand), 246.588);
}

/// A barrier of one plank takes the whole blow, not the half that would strike a higher one.
#[test]
fn debris_on_a_barrier_lower_than_it() {
    let mut task = opening(inches(36.0), feet(0.5));
    task.water.debris = Some(Debris::Special);
    let found = design(&task, &kit());
    // w = 62.4·0.25·0.5 + 100.
    about(
        pounds(check(&found, "plank 1", "shear").demand),
        107.8 * 33.5 / 12.0 / 2.0,
    );
}

/// A sill 1 ft below the ground in clean sand: soil adds (75 − 62.4)·1 = 12.6 lb/ft² at the
/// sill, falling to none at the ground; on the lowest plank (12.6 + 6.3)/2·0.5 = 4.725 lb/ft.
#[test]
fn a_sill_below_the_ground() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.water.sill_above_ground = feet(-1.0);
    task.water.soil = Some(SoilGroup::CleanSandOrGravel);
    let found = design(&task, &kit());
    about(
        pounds(check(&found, "plank 1", "shear").demand),
        74.925 * 33.5 / 12.0 / 2.0,
    );
}

/// Breaking waves: crests pass over a barrier that only reaches the still water.
#[test]
fn breaking_waves() {
    let mut task = opening(inches(36.0), feet(2.0));
    task.water.waves = Some(WaveAction::Breaking(BreakingWaves {
        category: RiskCategory::II,
        level: WaveLevel::Stillwater,
        behind: Behind::Dry,
    }));
    let found = design(&task, &kit());
    let outside = |shortfall: &Shortfall| matches!(shortfall, Shortfall::OutsideMethod { what } if what.contains("crests"));
    assert!(found.shortfalls.iter().any(outside));
    // d = 2 ft: at the stillwater surface 62.4·2·(2.8 + 1.2) = 499.2 lb/ft², 0.5 ft below it
    // 62.4·2·2.8·0.75 + 62.4·2.9 = 443.04; the uppermost plank governs: 235.56 lb/ft.
    let bending = found
        .checks()
        .find(|check| check.what == "bending" && check.case == LoadCase::Top)
        .unwrap();
    assert_eq!(bending.part, "plank 4");
    about(
        foot_pounds(bending.demand),
        235.56 * (33.5_f64 / 12.0).powi(2) / 8.0,
    );
}

/// Drag is in the load of a barrier although nobody states the width of the wall: 2.0·1.94·12²/2
/// = 279.4 lb/ft² beside 62.4·2.5²/2 = 195 lb/ft of still water.
#[test]
fn fast_water_drags_without_a_stated_width() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.water.velocity = Some(Velocity::new::<foot_per_second>(12.0));
    let found = design(&task, &kit());
    let load = found.load(LoadCase::DesignLevel).unwrap();
    let force = in_pounds_per_foot(load.on_barrier.resultant().force);
    about(force, 195.0 + 2.0 * 1.94 * 144.0 / 2.0 * 2.5);
    let outside = |shortfall: &Shortfall| matches!(shortfall, Shortfall::OutsideMethod { .. });
    assert!(found.shortfalls.iter().any(outside));
}

#[test]
fn fast_water_has_no_greatest_depth() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.water.velocity = Some(Velocity::new::<foot_per_second>(12.0));
    task.water.wall_width = Some(feet(40.0));
    assert_eq!(design(&task, &kit()).greatest_depth, None);
}

#[test]
fn numbers_that_are_none() {
    for height in [f64::NAN, f64::INFINITY] {
        let mut task = opening(inches(36.0), feet(2.5));
        task.height = Length::new::<foot>(height);
        let error = design_barrier(&task, &kit(), &rules(), None, None).unwrap_err();
        assert!(matches!(error, DesignError::Load(_)), "{error}");
    }
    for width in [f64::NAN, f64::INFINITY] {
        let task = opening(inches(width), feet(2.5));
        assert!(design_barrier(&task, &kit(), &rules(), None, None).is_err());
    }
    // No height is no barrier; no width leaves no room.
    let mut none = opening(inches(36.0), feet(2.5));
    none.height = feet(0.0);
    assert_eq!(
        design_barrier(&none, &kit(), &rules(), None, None),
        Ok(None)
    );
    for width in [-1.0, 0.0, 1.0 / 2.54, 4.0] {
        let found = design(&opening(inches(width), feet(2.5)), &kit());
        let no_room = |shortfall: &Shortfall| matches!(shortfall, Shortfall::NoRoom { .. });
        assert!(found.shortfalls.iter().any(no_room), "{width}");
    }
}
