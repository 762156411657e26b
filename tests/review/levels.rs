//! Flood level, annual chance, sill and ground, without any slip.

use sillmark::review::{Contribution, Shifts, Topic};

use super::fixture::{SITE, ngvd29, of_door, of_house, reviewed};

fn level(text: &str) -> String {
    format!("flood_level = \"{text}\"\nsource = \"a study\"")
}

#[test]
fn a_level_holds_exceeds_or_falls_short() {
    for (text, outcome) in [
        ("9.0 ft NAVD88", "holds"),
        ("2.743 m NAVD88", "holds"),
        ("9.5 ft NAVD88", "exceeds by 0.50 ft"),
        ("8.5 ft NAVD88", "falls short by 0.50 ft"),
    ] {
        let reviewed = of_house(&level(text));
        assert_eq!(reviewed.outcome(Topic::FloodLevel), outcome, "{text}");
        assert_eq!(reviewed.codes(Topic::FloodLevel), [""; 0], "{text}");
    }
}

#[test]
fn the_tolerance_is_made_of_what_is_known() {
    let point = of_house(&level("9.0 ft NAVD88"));
    let point = point.point(Topic::FloodLevel);
    let tolerance = point.tolerance.as_ref().unwrap();
    // 2·√(0.05² + (0.1/√12)²) ft, and two parts in a million of 9 ft.
    let by_hand = 2.0 * (0.05_f64.powi(2) + 0.01 / 12.0).sqrt() + 9.0 * 2e-6;
    assert!((tolerance.half_width() / 0.3048 - by_hand).abs() < 1e-6);
    let parts: Vec<Contribution> = tolerance.parts.iter().map(|part| part.of).collect();
    assert_eq!(
        parts,
        [
            Contribution::OurLevel,
            Contribution::LastDigit,
            Contribution::FootDefinition
        ]
    );
    assert!(tolerance.not_known.is_empty());
}

#[test]
fn a_coarser_digit_is_worth_less() {
    // 9 ft may be 8.5 ft to 9.5 ft.
    assert_eq!(
        of_house(&level("9 ft NAVD88")).outcome(Topic::FloodLevel),
        "holds"
    );
    let coarse = of_house(&level("10 ft NAVD88"));
    assert_eq!(coarse.outcome(Topic::FloodLevel), "exceeds by 1.00 ft");
    let site = SITE.replace("level = \"9 ft", "level = \"9.4 ft");
    let outcome =
        |text| reviewed(&site, &level(text), &Shifts::default()).outcome(Topic::FloodLevel);
    assert_eq!(outcome("9 ft NAVD88"), "holds");
    assert_eq!(outcome("9.0 ft NAVD88"), "falls short by 0.40 ft");
}

#[test]
fn a_level_of_unknown_quality_says_so() {
    let site = SITE.replace("standard_deviation = \"0.05 ft\"\n", "");
    let reviewed = reviewed(&site, &level("8.9 ft NAVD88"), &Shifts::default());
    assert_eq!(
        reviewed.outcome(Topic::FloodLevel),
        "falls short by 0.10 ft"
    );
    let tolerance = reviewed
        .point(Topic::FloodLevel)
        .tolerance
        .as_ref()
        .unwrap();
    assert_eq!(tolerance.not_known, [Contribution::OurLevel]);
}

#[test]
fn lower_within_our_uncertainty_cannot_be_rejected() {
    let lower = of_house(&level("8.92 ft NAVD88"));
    assert_eq!(lower.outcome(Topic::FloodLevel), "holds");
    assert_eq!(lower.codes(Topic::FloodLevel), ["within-our-uncertainty"]);
    let said = lower.sentences(Topic::FloodLevel);
    assert!(
        said.starts_with("0.08 ft lower than ours, but within the ± 0.10 ft that ours is known to: it cannot be rejected on that ground"),
        "{said}"
    );
    // Its own digit explains the difference, or it is higher, or too low.
    for text in [
        "9 ft NAVD88",
        "9.00 ft NAVD88",
        "9.08 ft NAVD88",
        "8.7 ft NAVD88",
    ] {
        assert_eq!(
            of_house(&level(text)).codes(Topic::FloodLevel),
            [""; 0],
            "{text}"
        );
    }
}

#[test]
fn a_level_on_another_datum_is_shifted_first() {
    let shifted = reviewed(SITE, &level("10.10 ft NGVD29"), &ngvd29(-1.1));
    assert_eq!(shifted.outcome(Topic::FloodLevel), "holds");
    let tolerance = shifted.point(Topic::FloodLevel).tolerance.as_ref().unwrap();
    assert!(
        tolerance
            .parts
            .iter()
            .any(|part| part.of == Contribution::DatumShift)
    );
    // Without the shift nothing is compared, and nothing is taken for a shift of nothing.
    let unknown = of_house(&level("9.0 ft NGVD29"));
    assert_eq!(
        unknown.outcome(Topic::FloodLevel),
        "cannot be checked: the shift from NGVD29 to NAVD88 at the site is not known"
    );
    let tidal = of_house(&level("9.0 ft MLLW"));
    assert!(
        tidal
            .outcome(Topic::FloodLevel)
            .starts_with("cannot be checked")
    );
}

#[test]
fn what_is_silent_cannot_be_checked() {
    let nothing = of_house("");
    for (topic, missing) in [
        (Topic::FloodLevel, "flood_level in the proposal"),
        (Topic::AnnualChance, "annual_chance in the proposal"),
        (
            Topic::Freeboard,
            "freeboard, or flood_level and design_level on one datum, in the proposal",
        ),
        (
            Topic::DesignLevel,
            "design_level, or flood_level and freeboard, in the proposal",
        ),
        (Topic::Leakage, "leakage in the proposal"),
        (Topic::Warning, "warning in the proposal"),
    ] {
        assert_eq!(
            nothing.outcome(topic),
            format!("cannot be checked: {missing}")
        );
    }
    assert_eq!(
        of_house("flood_level = \"9.0 ft NAVD88\"").codes(Topic::FloodLevel),
        ["no-source"]
    );
}

#[test]
fn our_own_gap_is_named() {
    let site = SITE
        .replace("event = \"1%\"", "event = \"2%\"")
        .replace("standard_deviation = \"0.05 ft\"\n", "");
    let gap = reviewed(&site, &level("9.0 ft NAVD88"), &Shifts::default());
    let said = gap.outcome(Topic::FloodLevel);
    assert!(
        said.starts_with("cannot be checked: a flood level of ours: unresolved"),
        "{said}"
    );
    let door = reviewed(
        &site,
        "[[opening]]\nid = \"door\"\nbarrier_height = \"2 ft\"",
        &Shifts::default(),
    );
    let said = door.outcome(Topic::BarrierHeight);
    assert!(
        said.starts_with("cannot be checked: a protection height of ours"),
        "{said}"
    );
}

#[test]
fn another_flood_is_not_compared_with_the_assessed_one() {
    let rarer = of_house(&format!(
        "annual_chance = \"0.2%\"\n{}",
        level("12.0 ft NAVD88")
    ));
    assert_eq!(rarer.outcome(Topic::AnnualChance), "exceeds");
    assert_eq!(
        rarer.outcome(Topic::FloodLevel),
        "cannot be checked: our level of the 0.2 % annual chance flood; --chance \"0.2 %\" assesses it"
    );
    let frequent = of_house(&format!(
        "annual_chance = \"1 in 50\"\n{}",
        level("8.0 ft NAVD88")
    ));
    assert_eq!(frequent.outcome(Topic::AnnualChance), "falls short");
    let same = of_house("annual_chance = \"1 in 100\"");
    assert_eq!(same.outcome(Topic::AnnualChance), "holds");
    // Where its level is known, it is.
    let site = SITE.replace(
        "[[opening]]",
        "[[flood_level]]\nevent = \"0.2%\"\nlevel = \"12 ft NAVD88\"\nsource = \"study\"\n[[opening]]",
    );
    let known = format!("annual_chance = \"0.2%\"\n{}", level("12.0 ft NAVD88"));
    let known = reviewed(&site, &known, &Shifts::default());
    assert_eq!(known.outcome(Topic::FloodLevel), "holds");
}

#[test]
fn a_higher_sill_is_the_unsafe_one() {
    for (text, outcome) in [
        ("8.1 ft NAVD88", "holds"),
        ("8.6 ft NAVD88", "falls short by 0.50 ft"),
        ("7.6 ft NAVD88", "exceeds by 0.50 ft"),
    ] {
        let sill = of_door(&format!("sill = \"{text}\""));
        assert_eq!(sill.outcome(Topic::Sill), outcome, "{text}");
    }
    let ground = of_door("ground = \"6.6 ft NAVD88\"");
    assert_eq!(ground.outcome(Topic::Ground), "falls short by 0.60 ft");
    let site = SITE.replace("lowest_adjacent_grade = \"6 ft NAVD88\"\n", "");
    let text = "[[opening]]\nid = \"door\"\nground = \"6.0 ft NAVD88\"";
    let unknown = reviewed(&site, text, &Shifts::default());
    assert!(
        unknown
            .outcome(Topic::Ground)
            .contains("neither surveyed nor in a terrain model")
    );
}
