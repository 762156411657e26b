//! Loads that follow from their own depth, and loads that do not.

use sillmark::load::RiskCategory;
use sillmark::quantity::LengthUnit::{Foot, Metre};
use sillmark::review::{Finding, LoadSlip, Shifts, Topic};

use super::fixture::{Reviewed, SITE, of_door, reviewed};

fn load(fields: &str) -> Reviewed {
    of_door(&format!("[opening.load]\n{fields}"))
}

fn slips(reviewed: &Reviewed, topic: Topic) -> Vec<LoadSlip> {
    let findings = reviewed.point(topic).findings.iter();
    let slips = findings.filter_map(|finding| match finding {
        Finding::Load { slip, .. } => Some(*slip),
        _ => None,
    });
    slips.collect()
}

#[test]
fn a_load_that_follows() {
    // 3 ft of fresh water: 187.2 psf, 280.8 lb/ft, 280.8 ft-lb/ft, 842 lb on 3 ft.
    let right = load(
        "depth = \"3.00 ft\"\npressure = \"187.2 psf\"\nforce_per_width = \"280.8 lb/ft\"\nmoment_per_width = \"280.8 ft-lb/ft\"\nforce = \"842 lb\"",
    );
    for topic in [
        Topic::Pressure,
        Topic::ForcePerWidth,
        Topic::MomentPerWidth,
        Topic::Force,
    ] {
        assert_eq!(right.outcome(topic), "holds");
        assert_eq!(slips(&right, topic), []);
    }
    // With the weight of water as metric books print it: 9.81 kN/m³.
    let metric = load(
        "depth = \"1.000 m\"\npressure = \"9.810 kPa\"\nforce_per_width = \"4.905 kN/m\"\nmoment_per_width = \"1.635 kN·m/m\"",
    );
    for topic in [Topic::Pressure, Topic::ForcePerWidth, Topic::MomentPerWidth] {
        assert_eq!(metric.outcome(topic), "holds");
    }
}

#[test]
fn still_water_where_waves_break() {
    let site = SITE.replace("[[opening]]", "[water]\nwaves = \"breaking\"\n[[opening]]");
    let offer = |waves: &str| {
        let load = "[opening.load]\ndepth = \"3.00 ft\"\nforce_per_width = \"280.8 lb/ft\"";
        let text = format!("[[opening]]\nid = \"door\"\n{load}\n{waves}");
        let reviewed = reviewed(&site, &text, &Shifts::default());
        reviewed.codes(Topic::ForcePerWidth)
    };
    assert_eq!(offer(""), ["waves-left-out"]);
    assert_eq!(offer("waves = \"none\""), ["waves-left-out"]);
    let breaking = "waves = \"breaking\"\nrisk_category = \"II\"";
    assert!(!offer(breaking).contains(&"waves-left-out"));
    // Where no waves are, none are left out.
    let still = load("depth = \"3.00 ft\"\nforce_per_width = \"280.8 lb/ft\"");
    assert_eq!(still.codes(Topic::ForcePerWidth), [""; 0]);
}

#[test]
fn the_depth_has_the_slips_of_a_height() {
    // Ours is 1.9 ft; the ground lies 2.1 ft below the sill.
    for (depth, code) in [
        ("0.90 ft", "freeboard-forgotten"),
        ("4.00 ft", "measured-from-ground"),
        ("0.58 ft", "feet-and-metres"),
    ] {
        let depth = load(&format!("depth = \"{depth}\""));
        assert_eq!(depth.codes(Topic::LoadDepth), [code]);
    }
}

#[test]
fn a_depth_in_feet_taken_for_one_in_metres() {
    // γ·3 m and γ·(3 m)²/2 for 3 ft; the other way round, γ·(3 ft)³/6 for 3 m.
    let feet = load(
        "depth = \"3.0 ft\"\npressure = \"29.4 kPa\"\nforce_per_width = \"44.1 kN/m\"\nforce = \"40.3 kN\"",
    );
    for topic in [Topic::Pressure, Topic::ForcePerWidth, Topic::Force] {
        assert_eq!(slips(&feet, topic), [LoadSlip::DepthTakenIn(Metre)]);
    }
    let metres = load("depth = \"3.00 m\"\nmoment_per_width = \"280.8 ft-lb/ft\"");
    let topic = Topic::MomentPerWidth;
    assert_eq!(slips(&metres, topic), [LoadSlip::DepthTakenIn(Foot)]);
    assert!(
        metres
            .sentences(topic)
            .ends_with("if the number of its depth is taken in ft")
    );
    let inches = load("depth = \"36 in\"\npressure = \"29.4 kPa\"");
    assert_eq!(slips(&inches, Topic::Pressure), []);
}

#[test]
fn slips_with_still_water() {
    let depth = "depth = \"3.00 ft\"\n";
    for (field, topic, slip) in [
        (
            "pressure = \"93.6 psf\"",
            Topic::Pressure,
            LoadSlip::MeanPressure,
        ),
        (
            "force_per_width = \"561.6 lb/ft\"",
            Topic::ForcePerWidth,
            LoadSlip::NotHalved,
        ),
        (
            "force_per_width = \"93.6 lb/ft\"",
            Topic::ForcePerWidth,
            LoadSlip::DepthForSquare(Foot),
        ),
        (
            "force_per_width = \"187.2 lb/ft\"",
            Topic::ForcePerWidth,
            LoadSlip::PressureForForce(Foot),
        ),
        (
            "moment_per_width = \"561.6 ft-lb/ft\"",
            Topic::MomentPerWidth,
            LoadSlip::MomentNotHalved,
        ),
        (
            "moment_per_width = \"421.2 ft-lb/ft\"",
            Topic::MomentPerWidth,
            LoadSlip::ArmAtHalfDepth,
        ),
        (
            "moment_per_width = \"93.6 ft-lb/ft\"",
            Topic::MomentPerWidth,
            LoadSlip::SquareForCube(Foot),
        ),
        (
            "force = \"281 lb\"",
            Topic::Force,
            LoadSlip::DepthForSquare(Foot),
        ),
        ("force = \"1685 lb\"", Topic::Force, LoadSlip::NotHalved),
    ] {
        let wrong = load(&format!("{depth}{field}"));
        assert_eq!(slips(&wrong, topic), [slip], "{field}");
    }
    let metric = load("depth = \"2.00 m\"\nforce_per_width = \"9.81 kN/m\"");
    assert_eq!(
        slips(&metric, Topic::ForcePerWidth),
        [LoadSlip::DepthForSquare(Metre)]
    );
    assert_eq!(
        metric.point(Topic::ForcePerWidth).findings[0].code(),
        "load-slip"
    );
}

#[test]
fn a_wrong_load_that_no_slip_gives() {
    let wrong = load("depth = \"3.00 ft\"\nforce_per_width = \"240.0 lb/ft\"");
    assert_eq!(
        wrong.outcome(Topic::ForcePerWidth),
        "falls short by 40.8 lb/ft"
    );
    assert_eq!(slips(&wrong, Topic::ForcePerWidth), []);
}

#[test]
fn a_depth_whose_square_is_itself_hides_the_slip() {
    let one = load("depth = \"1.00 ft\"\nforce_per_width = \"31.2 lb/ft\"");
    assert_eq!(one.outcome(Topic::ForcePerWidth), "holds");
    assert_eq!(slips(&one, Topic::ForcePerWidth), []);
}

#[test]
fn the_other_water() {
    let salt = load("depth = \"3.00 ft\"\npressure = \"192.0 psf\"");
    assert_eq!(salt.outcome(Topic::Pressure), "exceeds by 4.8 psf");
    assert_eq!(
        slips(&salt, Topic::Pressure),
        [LoadSlip::OtherSalinity("salt, 64.0 lb/ft³")]
    );
    let site = SITE.replace("[[opening]]", "[water]\nsalinity = \"salt\"\n[[opening]]");
    let text =
        "[[opening]]\nid = \"door\"\n[opening.load]\ndepth = \"3.00 ft\"\npressure = \"192.0 psf\"";
    let stated = reviewed(&site, text, &Shifts::default());
    assert_eq!(stated.outcome(Topic::Pressure), "holds");
}

#[test]
fn breaking_waves_with_depth_where_its_square_belongs() {
    // Category III, Cp 3.2; still water of 4 ft, fresh: (1.1·3.2 + 2.4)·62.4·16 = 5911 lb/ft.
    let waves = |force: &str| {
        load(&format!(
            "depth = \"4.00 ft\"\nwaves = \"breaking\"\nrisk_category = \"III\"\nforce_per_width = \"{force} lb/ft\""
        ))
    };
    assert_eq!(waves("5911").outcome(Topic::ForcePerWidth), "holds");
    for (force, slip) in [
        ("1477.6", LoadSlip::WaveDepthForSquare(Foot)),
        ("3274.8", LoadSlip::WaveBlowDepthForSquare(Foot)),
        ("4113.4", LoadSlip::WaveStandingDepthForSquare(Foot)),
        ("6409.7", LoadSlip::WaveStillWaterAgain),
        ("499.2", LoadSlip::StillWaterForWaves),
        ("4153.3", LoadSlip::WaveOtherCategory(RiskCategory::I)),
    ] {
        assert_eq!(
            slips(&waves(force), Topic::ForcePerWidth),
            [slip],
            "{force}"
        );
    }
    assert_eq!(slips(&waves("2500.0"), Topic::ForcePerWidth), []);
    let pressure = load(
        "depth = \"4.00 ft\"\nwaves = \"breaking\"\nrisk_category = \"III\"\npressure = \"1098.2 psf\"\nmoment_per_width = \"9000 ft-lb/ft\"",
    );
    assert_eq!(pressure.outcome(Topic::Pressure), "holds");
    assert!(
        pressure
            .outcome(Topic::MomentPerWidth)
            .contains("the code gives none")
    );
}

#[test]
fn what_a_load_lacks() {
    let bare = load("force_per_width = \"280.8 lb/ft\"");
    assert_eq!(
        bare.outcome(Topic::ForcePerWidth),
        "cannot be checked: load.depth in the proposal"
    );
    let waves = load("depth = \"3 ft\"\nwaves = \"breaking\"\nforce_per_width = \"5000 lb/ft\"");
    assert!(
        waves
            .outcome(Topic::ForcePerWidth)
            .contains("the risk category")
    );
    let other =
        load("depth = \"3 ft\"\nwaves = \"non-breaking\"\nforce_per_width = \"5000 lb/ft\"");
    assert!(
        other
            .outcome(Topic::ForcePerWidth)
            .contains("waves that do not break")
    );
}

#[test]
fn the_depth_that_it_is_taken_for() {
    // Ours is 1.9 ft over the sill.
    assert_eq!(
        load("depth = \"1.9 ft\"").outcome(Topic::LoadDepth),
        "holds"
    );
    assert_eq!(
        load("depth = \"0.9 ft\"").outcome(Topic::LoadDepth),
        "falls short by 1.00 ft"
    );
    assert_eq!(
        load("depth = \"3.0 ft\"").outcome(Topic::LoadDepth),
        "exceeds by 1.10 ft"
    );
    assert!(
        load("depth = \"4 ft\"\nwaves = \"breaking\"")
            .find(Topic::LoadDepth)
            .is_none()
    );
}
