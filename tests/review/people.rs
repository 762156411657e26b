//! Who lives there, what is sold to them, how long they have, and what leaks.

use sillmark::review::{Shifts, Topic};

use super::fixture::{SITE, of_house, reviewed};

fn at(site: &str, proposal: &str) -> super::fixture::Reviewed {
    reviewed(site, proposal, &Shifts::default())
}

#[test]
fn residential_use_sold_as_compliance() {
    let dwelling = SITE.replace("commercial", "residential");
    let sold = at(&dwelling, "compliance = true");
    assert_eq!(sold.outcome(Topic::Compliance), "falls short");
    assert!(
        sold.point(Topic::Compliance)
            .reference
            .contains("44 CFR 60.3(c)")
    );
    // It is what the proposal says that it is for, too.
    let theirs = of_house("compliance = true\noccupancy = \"residential\"");
    assert_eq!(theirs.outcome(Topic::Compliance), "falls short");
    assert_eq!(theirs.codes(Topic::Compliance), ["other-occupancy"]);
    // A dwelling may have barriers, only not as compliance; a shop may have both.
    assert_eq!(
        at(&dwelling, "compliance = false").outcome(Topic::Compliance),
        "holds"
    );
    assert_eq!(
        of_house("compliance = true").outcome(Topic::Compliance),
        "holds"
    );
    assert!(
        of_house("occupancy = \"residential\"")
            .find(Topic::Compliance)
            .is_none()
    );
    let unknown = SITE.replace("occupancy = \"commercial\"\n", "");
    assert!(
        at(&unknown, "compliance = true")
            .outcome(Topic::Compliance)
            .starts_with("cannot be checked")
    );
}

/// The house with a warning and a drill.
fn with_warning(hours: u32) -> String {
    SITE.replace(
        "[[opening]]",
        &format!("[water]\nwarning = \"{hours} h\"\n[fitting]\ntime_a_plank = \"10 min\"\ntime_a_post = \"10 min\"\n[[opening]]"),
    )
}

#[test]
fn a_figure_of_ours_is_not_told_as_proposed() {
    let written = |offer: &str, topic| {
        let reviewed = at(&with_warning(18), offer);
        reviewed.point(topic).theirs.clone().unwrap().written
    };
    assert_eq!(
        written("", Topic::FittingInWarning),
        "ours, as none is proposed"
    );
    assert_eq!(written("", Topic::TwelveHours), "ours, as none is proposed");
    assert_eq!(
        written("warning = \"24 h\"", Topic::TwelveHours),
        "the warning of the site file"
    );
    let door = "[[opening]]\nid = \"door\"";
    assert_eq!(
        written(door, Topic::WaterOnWall),
        "ours, as none is proposed"
    );
}

#[test]
fn not_enough_warning() {
    let site = with_warning(6);
    let short = at(&site, "warning = \"24 h\"\nfitting_time = \"8 h\"");
    assert_eq!(short.outcome(Topic::Warning), "falls short by 18 h");
    assert_eq!(short.outcome(Topic::FittingInWarning), "falls short by 2 h");
    assert_eq!(short.outcome(Topic::TwelveHours), "falls short by 6 h");
    assert!(
        short
            .point(Topic::TwelveHours)
            .reference
            .contains("ASCE 24-14")
    );
    let long = at(
        &with_warning(24),
        "warning = \"18 h\"\nfitting_time = \"8 h\"",
    );
    for topic in [Topic::Warning, Topic::FittingInWarning, Topic::TwelveHours] {
        assert_eq!(long.outcome(topic), "holds");
    }
}

#[test]
fn a_fitting_that_promises_too_much() {
    // Four planks of ten minutes.
    let site = with_warning(24);
    assert_eq!(
        at(&site, "fitting_time = \"20 min\"").outcome(Topic::FittingTime),
        "falls short by 20 min"
    );
    assert_eq!(
        at(&site, "fitting_time = \"40 min\"").outcome(Topic::FittingTime),
        "holds"
    );
    assert_eq!(
        at(&site, "fitting_time = \"60 min\"").outcome(Topic::FittingTime),
        "exceeds by 20 min"
    );
    assert_eq!(at(&site, "").outcome(Topic::FittingInWarning), "holds");
}

#[test]
fn a_warning_that_nobody_states() {
    let nobody = of_house("warning = \"6 h\"");
    assert!(
        nobody
            .outcome(Topic::Warning)
            .contains("[water] warning in the site file")
    );
    assert!(
        nobody
            .outcome(Topic::FittingInWarning)
            .contains("the time that the fitting takes")
    );
    assert_eq!(nobody.outcome(Topic::TwelveHours), "falls short by 6 h");
    assert!(of_house("").find(Topic::TwelveHours).is_none());
}

#[test]
fn a_leaking_seal_without_a_barrier_is_not_held_against_the_limit() {
    // Nobody knows how long the seals are where no sill is measured.
    let site = SITE.replace(
        "[[opening]]",
        "[inside]\nfloor_area = \"100 ft2\"\n[[opening]]\nsill = \"unknown\"",
    );
    let reviewed = at(&site, "leakage = \"90 gal/h/ft\"");
    assert_eq!(
        reviewed.outcome(Topic::Leakage),
        "cannot be checked: a barrier of ours, whose seals the rate goes with"
    );
    let reference = &reviewed.point(Topic::Leakage).reference;
    assert!(
        reference.contains("substantially impermeable"),
        "{reference}"
    );
}

#[test]
fn leakage() {
    // The demonstration kit's seals leak 0.5 gal/h/ft; the floor takes 4 in in 24 hours.
    let site = SITE.replace(
        "[[opening]]",
        "[inside]\nfloor_area = \"100 ft2\"\n[[opening]]",
    );
    let rate = |text: &str| at(&site, &format!("leakage = \"{text}\""));
    assert_eq!(rate("0.50 gal/h/ft").outcome(Topic::LeakageRate), "holds");
    assert!(
        rate("0.20 gal/h/ft")
            .outcome(Topic::LeakageRate)
            .starts_with("falls short")
    );
    assert!(
        rate("0.90 gal/h/ft")
            .outcome(Topic::LeakageRate)
            .starts_with("exceeds")
    );
    // 100 ft² · 4 in / 24 h = 10.39 gal/h.
    assert_eq!(rate("10.3 gal/h").outcome(Topic::Leakage), "holds");
    assert_eq!(
        rate("12.0 gal/h").outcome(Topic::Leakage),
        "falls short by 1.61 gal/h"
    );
    // 6.8 ft of wetted seal: 3 ft of sill and twice 1.9 ft.
    assert_eq!(rate("1.00 gal/h/ft").outcome(Topic::Leakage), "holds");
    assert_eq!(
        rate("2.00 gal/h/ft").outcome(Topic::Leakage),
        "falls short by 3.21 gal/h"
    );
    assert!(
        of_house("leakage = \"40 gal/h\"")
            .outcome(Topic::Leakage)
            .contains("[inside] floor_area")
    );
}
