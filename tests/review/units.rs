//! Feet and metres, and the two feet that are one.

use sillmark::review::{Shifts, Topic};

use super::fixture::{SITE, of_door, of_house, reviewed};

fn level(text: &str) -> String {
    format!("flood_level = \"{text}\"\nsource = \"a study\"")
}

#[test]
fn metres_written_as_feet_and_the_like() {
    // Ours is 9 ft, 2.743 m.
    for (text, said) in [
        (
            "2.74 ft NAVD88",
            "its number is one of metres: 8.99 ft NAVD88",
        ),
        ("9.00 m NAVD88", "its number is one of feet: 9.00 ft NAVD88"),
        (
            "0.836 m NAVD88",
            "it was converted from feet to metres once too often: 9.00 ft NAVD88",
        ),
        (
            "29.53 ft NAVD88",
            "it was converted from metres to feet once too often: 9.00 ft NAVD88",
        ),
    ] {
        let mixed = of_house(&level(text));
        assert_eq!(
            mixed.codes(Topic::FloodLevel),
            ["feet-and-metres"],
            "{text}"
        );
        let sentence = mixed.sentences(Topic::FloodLevel);
        assert_eq!(sentence, format!("equals ours if {said}"), "{text}");
    }
}

#[test]
fn the_same_level_in_the_other_unit_is_no_mix_up() {
    for text in [
        "2.743 m NAVD88",
        "274.3 cm NAVD88",
        "9.00 ftUS NAVD88",
        "108 in NAVD88",
    ] {
        let same = of_house(&level(text));
        assert_eq!(same.outcome(Topic::FloodLevel), "holds", "{text}");
        assert_eq!(same.codes(Topic::FloodLevel), [""; 0], "{text}");
    }
    let other = of_house(&level("5.0 ft NAVD88"));
    assert_eq!(other.codes(Topic::FloodLevel), [""; 0]);
}

#[test]
fn a_survey_foot_is_no_mix_up() {
    // 5,000 survey feet are 5,000.01 ft: more than all that the two levels are uncertain by.
    let site = SITE
        .replace("9 ft NAVD88", "5000 ft NAVD88")
        .replace("8.1 ft NAVD88", "4999.1 ft NAVD88")
        .replace("6 ft NAVD88", "4997 ft NAVD88")
        .replace("0.05 ft", "0.0001 ft");
    let none = Shifts::default();
    let of = |text: &str| reviewed(&site, &level(text), &none);
    for text in [
        "5000.0000 ftUS NAVD88",
        "5000.0000 ft NAVD88",
        "5000.0100 ft NAVD88",
    ] {
        assert_eq!(of(text).outcome(Topic::FloodLevel), "holds", "{text}");
        assert_eq!(of(text).codes(Topic::FloodLevel), [""; 0], "{text}");
    }
    // Three times as much is a difference, and no mix-up of units either.
    assert_eq!(
        of("5000.0300 ft NAVD88").outcome(Topic::FloodLevel),
        "exceeds by 0.03 ft"
    );
    assert_eq!(of("5000.0300 ft NAVD88").codes(Topic::FloodLevel), [""; 0]);
}

#[test]
fn a_height_in_the_wrong_unit() {
    // Ours is 1.9 ft, 0.579 m.
    let mixed = of_door("protection_height = \"0.58 ft\"\nbarrier_height = \"1.9 m\"");
    assert_eq!(mixed.codes(Topic::ProtectionHeight), ["feet-and-metres"]);
    assert_eq!(mixed.codes(Topic::BarrierHeight), ["feet-and-metres"]);
    let right = of_door("protection_height = \"0.58 m\"\nbarrier_height = \"1.9 ft\"");
    assert_eq!(right.codes(Topic::ProtectionHeight), [""; 0]);
    assert_eq!(right.codes(Topic::BarrierHeight), [""; 0]);
}

#[test]
fn inches_and_centimetres_are_no_number_of_metres_or_feet() {
    // Ours is 1.9 ft, 0.579 m: 7 in are 0.58 ft, which times 3.28 is ours.
    for text in ["7 in", "190 cm", "0 ft 7 in"] {
        let door = of_door(&format!("protection_height = \"{text}\""));
        let said = door.sentences(Topic::ProtectionHeight);
        assert!(!said.contains("its number is one of"), "{text}: {said}");
    }
}

#[test]
fn a_chosen_figure_that_was_converted_is_no_other() {
    // The rule's foot is 0.3048 m, and the kit's planks of 6 in are 152.4 mm.
    for text in ["0.3 m", "0.30 m", "0.305 m", "305 mm", "1 ft", "12 in"] {
        let stated = of_house(&format!("freeboard = \"{text}\""));
        assert_eq!(stated.outcome(Topic::Freeboard), "holds", "{text}");
    }
    for text in ["0.25 m", "0.9 ft", "11 in"] {
        let stated = of_house(&format!("freeboard = \"{text}\""));
        let outcome = stated.outcome(Topic::Freeboard);
        assert!(outcome.starts_with("falls short"), "{text}: {outcome}");
    }
    let planks = of_door("plank_height = \"152 mm\"\nbarrier_height = \"1.22 m\"");
    assert_eq!(planks.outcome(Topic::PlankHeight), "holds");
    assert_eq!(planks.outcome(Topic::KitHeight), "holds");
}

#[test]
fn less_than_a_hundredth_of_a_foot_is_not_told() {
    // Ours is 1.9 ft, 0.57912 m.
    let door = of_door("barrier_height = \"57.9 cm\"");
    assert_eq!(door.outcome(Topic::BarrierHeight), "holds");
    assert_eq!(door.codes(Topic::BarrierHeight), [""; 0]);
}
