//! Shifts between datums that were not applied, or applied otherwise than they should be.

use sillmark::review::{DatumSlip, Finding, Topic};

use super::fixture::{SITE, ngvd29, reviewed};

/// The slips that explain a proposed flood level, with NAVD88 = NGVD29 + `shift` feet.
fn slips(level: &str, shift: f64) -> Vec<DatumSlip> {
    let text = format!("flood_level = \"{level}\"\nsource = \"a study\"");
    let reviewed = reviewed(SITE, &text, &ngvd29(shift));
    let findings = &reviewed.point(Topic::FloodLevel).findings;
    findings
        .iter()
        .filter_map(|finding| match finding {
            Finding::DatumShift { slip, .. } => Some(*slip),
            _ => None,
        })
        .collect()
}

#[test]
fn written_on_our_datum() {
    use DatumSlip::{NotApplied, OnceTooOften, WrongWay};
    // Ours is 9 ft NAVD88, which is 10.1 ft NGVD29.
    for (level, slip) in [
        ("10.10 ft NAVD88", NotApplied),
        ("11.20 ft NAVD88", WrongWay),
        ("7.90 ft NAVD88", OnceTooOften),
    ] {
        assert_eq!(slips(level, -1.1), [slip], "{level}");
    }
    // In the west the shift is the other way: ours is 6.25 ft NGVD29.
    assert_eq!(slips("6.25 ft NAVD88", 2.75), [NotApplied]);
    assert_eq!(slips("3.50 ft NAVD88", 2.75), [WrongWay]);
    assert_eq!(slips("11.75 ft NAVD88", 2.75), [OnceTooOften]);
}

#[test]
fn written_on_the_other_datum() {
    use DatumSlip::{NotApplied, OnceTooOften, WrongWay};
    for (level, slip) in [
        ("9.00 ft NGVD29", NotApplied),
        ("7.90 ft NGVD29", WrongWay),
        ("11.20 ft NGVD29", OnceTooOften),
    ] {
        assert_eq!(slips(level, -1.1), [slip], "{level}");
    }
    assert_eq!(slips("10.10 ft NGVD29", -1.1), []); // it is right
}

#[test]
fn it_says_so_with_the_shift_and_its_source() {
    let text = "flood_level = \"9.00 ft NGVD29\"\nsource = \"a study\"";
    let reviewed = reviewed(SITE, text, &ngvd29(-1.1));
    assert_eq!(
        reviewed.outcome(Topic::FloodLevel),
        "falls short by 1.10 ft"
    );
    assert_eq!(
        reviewed.sentences(Topic::FloodLevel),
        "equals ours if the shift from NGVD29 to NAVD88 (-1.10 ft, county study, table 2) was not applied"
    );
}

#[test]
fn a_shift_within_the_tolerance_explains_nothing() {
    // ± 0.1 ft of the level and ± 0.1 ft of the shift: nobody sees 0.12 ft.
    assert_eq!(slips("9.12 ft NAVD88", -0.12), []);
    assert_eq!(slips("9.24 ft NAVD88", -0.12), []);
    assert_eq!(slips("9.30 ft NAVD88", -0.30), [DatumSlip::NotApplied]);
}

#[test]
fn a_difference_that_is_no_shift_is_none() {
    assert_eq!(slips("10.60 ft NAVD88", -1.1), []);
    assert_eq!(slips("9.00 ft NAVD88", -1.1), []);
}

#[test]
fn a_sill_can_be_mixed_up_too() {
    // 8.1 ft NAVD88 is 9.2 ft NGVD29.
    let text = "[[opening]]\nid = \"door\"\nsill = \"9.20 ft NAVD88\"";
    let mixed = reviewed(SITE, text, &ngvd29(-1.1));
    assert_eq!(mixed.outcome(Topic::Sill), "falls short by 1.10 ft");
    assert_eq!(mixed.codes(Topic::Sill), ["datum-shift"]);
    let right = text.replace("NAVD88", "NGVD29");
    let right = reviewed(SITE, &right, &ngvd29(-1.1));
    assert_eq!(right.outcome(Topic::Sill), "holds");
    assert_eq!(right.codes(Topic::Sill), [""; 0]);
}

#[test]
fn every_candidate_is_told() {
    // With a foot of freeboard and a shift of a foot, either explains 10 ft.
    let text = "flood_level = \"10.00 ft NAVD88\"\nsource = \"a study\"";
    let both = reviewed(SITE, text, &ngvd29(-1.0));
    assert_eq!(
        both.codes(Topic::FloodLevel),
        ["datum-shift", "design-level-as-flood-level"]
    );
}
