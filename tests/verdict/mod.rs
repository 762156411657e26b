//! Verdicts: what each piece of evidence leads to.

use std::collections::BTreeSet;

use sillmark::quantity::{
    Elevation, parse_duration, parse_elevation, parse_length, parse_pressure, parse_velocity,
};
use sillmark::site::{WallKind, Waves};
use sillmark::verdict::{
    Caution, CautionTexts, Evidence, GroundSource, Limits, MapStatement, Missing, Reason, Verdict,
    WallWater, judge,
};

fn level(text: &str) -> Elevation {
    parse_elevation(text).unwrap()
}

/// A door whose sill lies `depth` below a design level of 110 ft.
fn below(depth: f64) -> Evidence {
    Evidence {
        sill: Some(level(&format!("{} ft NAVD88", 110.0 - depth))),
        needs_ground: false,
        design: MapStatement::DesignLevel(level("110 ft NAVD88")),
        coastal_zone: None,
        river_beside: None,
        floodway: false,
        waves: None,
        velocity: None,
        wall: Some(WallKind::UnreinforcedMasonry),
        lowest_ground: None,
    }
}

fn reasons(evidence: &Evidence) -> Vec<Reason> {
    judge(evidence, &Limits::shipped().unwrap()).unwrap()
}

fn verdict(evidence: &Evidence) -> Verdict {
    Verdict::of(&reasons(evidence))
}

#[test]
fn at_or_above_the_design_level() {
    assert_eq!(verdict(&below(0.0)), Verdict::Above);
    assert_eq!(verdict(&below(-1.0)), Verdict::Above);
    assert_eq!(verdict(&below(0.1)), Verdict::Protect);
}

/// FEMA P-55 (2011) vol. II 15.3.3 reads 3 ft as including freeboard, so it is held against
/// the design level.
#[test]
fn ordinary_masonry_takes_three_feet_including_freeboard() {
    assert_eq!(verdict(&below(3.0)), Verdict::Protect);
    assert_eq!(verdict(&below(3.01)), Verdict::Engineer);
}

/// US Army Corps of Engineers, Flood Proofing Tests (1988) p. 18: isolated panels to 2 ft.
#[test]
fn a_weak_panel_takes_two_feet() {
    let panel = |depth| Evidence {
        wall: Some(WallKind::UnsupportedPanel),
        ..below(depth)
    };
    assert_eq!(verdict(&panel(2.0)), Verdict::Protect);
    assert_eq!(verdict(&panel(2.01)), Verdict::Engineer);
}

#[test]
fn a_wall_without_a_known_limit_always_needs_the_engineer() {
    assert_eq!(
        verdict(&Evidence {
            wall: Some(WallKind::Frame),
            ..below(0.5)
        }),
        Verdict::Engineer
    );
}

#[test]
fn the_wall_stands_in_water_from_surveyed_ground_up() {
    let ground = |source| Evidence {
        lowest_ground: Some((level("106.5 ft NAVD88"), source)),
        ..below(1.9)
    };
    assert_eq!(verdict(&ground(GroundSource::Surveyed)), Verdict::Engineer);
    assert_eq!(
        verdict(&ground(GroundSource::Terrain)),
        Verdict::Protect,
        "a terrain model is not at the wall: a caution"
    );
}

#[test]
fn a_sill_far_from_the_ground_is_no_answer() {
    // 611.3 ft taken for metres over ground at 186 m, and the other way round.
    let at = |sill, ground, source| Evidence {
        sill: Some(level(sill)),
        lowest_ground: Some((level(ground), source)),
        ..below(1.0)
    };
    let (terrain, surveyed) = (GroundSource::Terrain, GroundSource::Surveyed);
    for (sill, ground) in [
        ("611.3 m NAVD88", "186 m NAVD88"),
        ("186.6 ft NAVD88", "186 m NAVD88"),
    ] {
        let reasons = reasons(&at(sill, ground, terrain));
        assert_eq!(Verdict::of(&reasons), Verdict::Unresolved);
        assert_eq!(reasons[0].code(), "sill-far-from-ground");
        assert_eq!(reasons.len(), 1, "nothing else is of use");
    }
    // Thirty metres are still a house on a slope; surveyed ground is the user's own word.
    assert_eq!(
        verdict(&at("136 m NAVD88", "106.1 m NAVD88", terrain)),
        Verdict::Above
    );
    assert_eq!(
        verdict(&at("611.3 m NAVD88", "186 m NAVD88", surveyed)),
        Verdict::Above
    );
}

#[test]
fn waves_floodway_and_fast_water_need_the_engineer() {
    let cases = [
        Evidence {
            coastal_zone: Some("VE".to_owned()),
            ..below(1.0)
        },
        Evidence {
            waves: Some(Waves::Breaking),
            ..below(1.0)
        },
        Evidence {
            floodway: true,
            ..below(1.0)
        },
        Evidence {
            velocity: Some(parse_velocity("5.1 ft/s").unwrap()),
            ..below(1.0)
        },
    ];
    for evidence in cases {
        assert_eq!(verdict(&evidence), Verdict::Engineer, "{evidence:?}");
    }
    let slow = Evidence {
        velocity: Some(parse_velocity("5 ft/s").unwrap()),
        waves: Some(Waves::None),
        ..below(1.0)
    };
    assert_eq!(verdict(&slow), Verdict::Protect);
}

#[test]
fn a_sill_below_the_lowest_ground_needs_the_engineer() {
    let ground = Some((level("109.5 ft NAVD88"), GroundSource::Terrain));
    assert_eq!(
        verdict(&Evidence {
            lowest_ground: ground,
            ..below(1.0)
        }),
        Verdict::Engineer
    );
    assert_eq!(
        verdict(&Evidence {
            lowest_ground: ground,
            ..below(0.5)
        }),
        Verdict::Protect
    );
}

#[test]
fn what_is_missing_is_unresolved_and_says_what() {
    let unmeasured = Evidence {
        sill: None,
        ..below(1.0)
    };
    assert_eq!(reasons(&unmeasured), [Reason::Missing(Missing::Sill)]);
    let nowhere = Evidence {
        design: MapStatement::Unresolved(Missing::ZoneHere),
        ..below(1.0)
    };
    assert_eq!(verdict(&nowhere), Verdict::Unresolved);
}

#[test]
fn outside_the_mapped_flood_a_cellar_still_needs_the_engineer() {
    let outside = Evidence {
        design: MapStatement::NoFlood("X".to_owned()),
        ..below(1.0)
    };
    assert_eq!(verdict(&outside), Verdict::Above);
    let ground = Some((level("115 ft NAVD88"), GroundSource::Terrain));
    assert_eq!(
        verdict(&Evidence {
            lowest_ground: ground,
            ..outside
        }),
        Verdict::Engineer
    );
}

#[test]
fn a_map_that_says_outside_is_not_believed_below_the_river_beside() {
    let outside = Evidence {
        design: MapStatement::NoFlood("X".to_owned()),
        ..below(1.0)
    };
    let beside = |height| Evidence {
        river_beside: Some((level(height), "cross-sections")),
        ..outside.clone()
    };
    assert_eq!(verdict(&beside("109.5 ft NAVD88")), Verdict::Unresolved);
    assert_eq!(verdict(&beside("109 ft NAVD88")), Verdict::Above);
}

#[test]
fn the_weightiest_reason_comes_first() {
    let reasons = reasons(&Evidence {
        floodway: true,
        ..below(3.5)
    });
    assert_eq!(reasons[0].verdict(), Verdict::Engineer);
    assert_eq!(reasons.last().map(Reason::verdict), Some(Verdict::Protect));
}

#[test]
fn two_datums_are_an_error_not_a_verdict() {
    let mixed = Evidence {
        sill: Some(level("109 ft NGVD29")),
        ..below(1.0)
    };
    assert!(judge(&mixed, &Limits::shipped().unwrap()).is_err());
}

/// One of each: the match in `Caution::code` makes a new variant fail to compile, this test
/// makes it fail without a sentence.
fn one_of_each_caution() -> Vec<Caution> {
    let words = || "x".to_owned();
    let length = parse_length("1 ft").unwrap();
    vec![
        Caution::ResidentialCompliance,
        Caution::StatedDepth,
        Caution::ThresholdEstimated,
        Caution::UpliftUnderFloor {
            depth: length,
            pressure: parse_pressure("62.4 psf").unwrap(),
        },
        Caution::ShortWarning {
            warning: parse_duration("6 h").unwrap(),
        },
        Caution::OccupancyNotStated,
        Caution::CoastalZone,
        Caution::Floodway,
        Caution::NoFreeboard,
        Caution::LevelNotCompared { level: words() },
        Caution::OutsideMappedFlood { zone: words() },
        Caution::ZonesOverlap {
            taken: words(),
            others: vec![words()],
        },
        Caution::ZoneUnknown { why: String::new() },
        Caution::ZoneEdge,
        Caution::ZoneRemark { remark: words() },
        Caution::GroundAboveLevel {
            ground: level("2 ft NAVD88"),
            level: level("1 ft NAVD88"),
        },
        Caution::GroundUnknown { why: words() },
        Caution::TerrainVoidNear { source: words() },
        Caution::TerrainRim { source: words() },
        Caution::WallBelowSill(WallWater {
            openings: vec![words()],
            water: length,
            limit: length,
            ground: GroundSource::Terrain,
        }),
        Caution::WallNotStated {
            openings: vec![words()],
        },
        Caution::LevelsDisagree {
            decided_by: "x",
            decided: level("1 ft NAVD88"),
            other_source: "y",
            other: level("2 ft NAVD88"),
            difference: length,
        },
        Caution::LevelRemark { remark: words() },
        Caution::LevelUncertaintyUnknown,
        Caution::LevelUncertainty,
        Caution::DemonstrationKit,
        Caution::StillWater,
        Caution::SurveySill,
        Caution::ShortDuration,
        Caution::MapNotForecast,
        Caution::LocalCode,
    ]
}

#[test]
fn every_caution_has_its_sentence_and_every_sentence_its_caution() {
    let texts = CautionTexts::shipped().unwrap();
    let written: BTreeSet<String> = texts.all().map(|(code, ..)| code.to_owned()).collect();
    let used: BTreeSet<String> = one_of_each_caution()
        .iter()
        .map(|caution| caution.code().to_owned())
        .collect();
    assert_eq!(written, used);
}
