//! Heights measured from the ground instead of the sill, which lies 2.1 ft higher.

use sillmark::review::{Shifts, Topic};

use super::fixture::{SITE, of_door, of_house, reviewed};

#[test]
fn a_height_from_the_ground() {
    // Ours is 1.9 ft over the sill, 4.0 ft over the ground.
    let ground = of_door("protection_height = \"4.0 ft\"");
    assert_eq!(
        ground.outcome(Topic::ProtectionHeight),
        "exceeds by 2.10 ft"
    );
    assert_eq!(
        ground.codes(Topic::ProtectionHeight),
        ["measured-from-ground"]
    );
    assert_eq!(
        ground.sentences(Topic::ProtectionHeight),
        "equals ours if it is measured from the ground instead of the sill, which lies 2.10 ft higher"
    );
    for text in ["1.9 ft", "3.3 ft", "5.0 ft"] {
        let other = of_door(&format!("protection_height = \"{text}\""));
        assert_eq!(other.codes(Topic::ProtectionHeight), [""; 0], "{text}");
    }
}

#[test]
fn a_sill_on_the_ground_is_one_edge() {
    let site = SITE.replace("6 ft NAVD88", "8.0 ft NAVD88");
    let text = "[[opening]]\nid = \"door\"\nprotection_height = \"2.2 ft\"";
    let one = reviewed(&site, text, &Shifts::default());
    assert_eq!(one.codes(Topic::ProtectionHeight), [""; 0]);
}

#[test]
fn by_its_own_levels() {
    let own = |height: &str| {
        of_house(&format!(
            "design_level = \"12.0 ft NAVD88\"\n[[opening]]\nid = \"door\"\nsill = \"8.1 ft NAVD88\"\nground = \"6.5 ft NAVD88\"\nprotection_height = \"{height}\""
        ))
    };
    let ground = own("5.5 ft");
    assert_eq!(
        ground.outcome(Topic::OwnProtectionHeight),
        "exceeds by 1.60 ft"
    );
    assert_eq!(
        ground.codes(Topic::OwnProtectionHeight),
        ["measured-from-ground"]
    );
    assert!(
        ground
            .sentences(Topic::OwnProtectionHeight)
            .starts_with("equals its own figures if")
    );
    assert_eq!(own("3.9 ft").outcome(Topic::OwnProtectionHeight), "holds");
    assert_eq!(
        own("3.0 ft").outcome(Topic::OwnProtectionHeight),
        "falls short by 0.90 ft"
    );
    assert_eq!(own("3.0 ft").codes(Topic::OwnProtectionHeight), [""; 0]);
}

#[test]
fn a_barrier_that_is_stated_from_the_ground() {
    // 3 ft over the ground are 0.9 ft over the sill.
    let low = of_door("barrier_height = \"3 ft\"\nmeasured_from = \"ground\"");
    assert_eq!(low.outcome(Topic::BarrierHeight), "falls short by 1.00 ft");
    assert!(
        low.codes(Topic::BarrierHeight)
            .contains(&"less-over-the-sill")
    );
    assert!(low.sentences(Topic::BarrierHeight).contains(
        "it is stated from the ground: of the 3.00 ft over the ground 0.90 ft are left over the sill"
    ));
    let high = of_door("barrier_height = \"4 ft\"\nmeasured_from = \"ground\"");
    assert_eq!(high.outcome(Topic::BarrierHeight), "holds");
    assert_eq!(high.codes(Topic::BarrierHeight), [""; 0]);
    let sill = of_door("barrier_height = \"3 ft\"\nmeasured_from = \"sill\"");
    assert_eq!(sill.outcome(Topic::BarrierHeight), "exceeds by 1.10 ft");
    // Its own levels are taken before ours.
    let own = of_door(
        "barrier_height = \"3 ft\"\nmeasured_from = \"ground\"\nsill = \"8.1 ft NAVD88\"\nground = \"7.0 ft NAVD88\"",
    );
    assert_eq!(own.outcome(Topic::BarrierHeight), "holds");
}

#[test]
fn from_the_ground_without_ground() {
    let site = SITE.replace("lowest_adjacent_grade = \"6 ft NAVD88\"\n", "");
    let text = "[[opening]]\nid = \"door\"\nbarrier_height = \"3 ft\"\nmeasured_from = \"ground\"";
    let unknown = reviewed(&site, text, &Shifts::default());
    assert_eq!(
        unknown.outcome(Topic::BarrierHeight),
        "cannot be checked: the ground before the opening, which the height is measured from"
    );
}

#[test]
fn a_low_barrier_within_our_uncertainty() {
    let lower = of_door("barrier_height = \"21.5 in\"");
    assert_eq!(lower.outcome(Topic::BarrierHeight), "holds");
    assert_eq!(
        lower.codes(Topic::BarrierHeight),
        ["within-our-uncertainty"]
    );
    let low = of_door("barrier_height = \"18 in\"");
    assert_eq!(low.outcome(Topic::BarrierHeight), "falls short by 0.40 ft");
    assert_eq!(low.codes(Topic::BarrierHeight), [""; 0]);
}

#[test]
fn a_barrier_lower_than_its_own_figures_is_not_excused_by_our_uncertainty() {
    let own = of_door("protection_height = \"1.90 ft\"\nbarrier_height = \"21.5 in\"");
    assert_eq!(
        own.outcome(Topic::OwnBarrierHeight),
        "falls short by 0.11 ft"
    );
    let enough = of_door("protection_height = \"1.90 ft\"\nbarrier_height = \"24 in\"");
    assert_eq!(enough.outcome(Topic::OwnBarrierHeight), "holds");
}
