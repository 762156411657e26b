//! Freeboard counted twice or forgotten; the base level in the place of the design level.

use sillmark::review::{Shifts, Topic};

use super::fixture::{SITE, of_door, of_house, reviewed};

#[test]
fn the_freeboard_itself() {
    for (text, outcome, codes) in [
        ("1 ft", "holds", vec![]),
        ("12 in", "holds", vec![]),
        ("0.5 ft", "falls short by 0.50 ft", vec![]),
        (
            "0 ft",
            "falls short by 1.00 ft",
            vec!["freeboard-forgotten"],
        ),
        ("2 ft", "exceeds by 1.00 ft", vec!["freeboard-twice"]),
        ("3 ft", "exceeds by 2.00 ft", vec![]),
    ] {
        let reviewed = of_house(&format!("freeboard = \"{text}\""));
        assert_eq!(reviewed.outcome(Topic::Freeboard), outcome, "{text}");
        assert_eq!(reviewed.codes(Topic::Freeboard), codes, "{text}");
    }
}

#[test]
fn a_freeboard_that_follows_from_two_levels() {
    let levels = "flood_level = \"9.0 ft NAVD88\"\ndesign_level = \"9.5 ft NAVD88\"";
    assert_eq!(
        of_house(levels).outcome(Topic::Freeboard),
        "falls short by 0.50 ft"
    );
    let datums = "flood_level = \"9.0 ft NGVD29\"\ndesign_level = \"9.5 ft NAVD88\"";
    assert!(
        of_house(datums)
            .outcome(Topic::Freeboard)
            .starts_with("cannot be checked")
    );
}

#[test]
fn the_design_level_against_ours() {
    for (text, outcome, codes) in [
        ("10.0 ft NAVD88", "holds", vec![]),
        (
            "11.0 ft NAVD88",
            "exceeds by 1.00 ft",
            vec!["freeboard-twice"],
        ),
        (
            "9.0 ft NAVD88",
            "falls short by 1.00 ft",
            vec!["freeboard-forgotten", "base-level-as-design-level"],
        ),
        ("9.5 ft NAVD88", "falls short by 0.50 ft", vec![]),
    ] {
        let reviewed = of_house(&format!("design_level = \"{text}\""));
        assert_eq!(reviewed.outcome(Topic::DesignLevel), outcome, "{text}");
        assert_eq!(reviewed.codes(Topic::DesignLevel), codes, "{text}");
    }
    let said = of_house("design_level = \"9.0 ft NAVD88\"").sentences(Topic::DesignLevel);
    assert!(
        said.contains("equals our flood level (9.00 ft NAVD88): the base level may stand where the design level belongs"),
        "{said}"
    );
}

#[test]
fn a_design_level_that_follows() {
    let follows = of_house("flood_level = \"9.0 ft NAVD88\"\nfreeboard = \"0 ft\"");
    assert_eq!(
        follows.outcome(Topic::DesignLevel),
        "falls short by 1.00 ft"
    );
    assert_eq!(follows.codes(Topic::DesignLevel), ["freeboard-forgotten"]);
    assert!(follows.find(Topic::OwnDesignLevel).is_none());
}

#[test]
fn the_design_level_against_its_own_figures() {
    // Their level is half a foot higher than ours: only their own figures tell.
    let own = |design: &str| {
        of_house(&format!(
            "flood_level = \"9.5 ft NAVD88\"\nfreeboard = \"1 ft\"\ndesign_level = \"{design}\""
        ))
    };
    let right = own("10.5 ft NAVD88");
    assert_eq!(right.outcome(Topic::OwnDesignLevel), "holds");
    assert_eq!(right.codes(Topic::OwnDesignLevel), [""; 0]);
    let twice = own("11.5 ft NAVD88");
    assert_eq!(twice.codes(Topic::OwnDesignLevel), ["freeboard-twice"]);
    assert_eq!(
        twice.sentences(Topic::OwnDesignLevel),
        "equals its own figures if the freeboard of 1.00 ft is counted twice"
    );
    let bare = own("9.5 ft NAVD88");
    assert_eq!(
        bare.outcome(Topic::OwnDesignLevel),
        "falls short by 1.00 ft"
    );
    assert_eq!(
        bare.codes(Topic::OwnDesignLevel),
        ["base-level-as-design-level"]
    );
    assert_eq!(own("10.9 ft NAVD88").codes(Topic::OwnDesignLevel), [""; 0]);
}

#[test]
fn the_design_level_in_the_place_of_the_flood_level() {
    let level = of_house("flood_level = \"10.0 ft NAVD88\"\nsource = \"a study\"");
    assert_eq!(
        level.codes(Topic::FloodLevel),
        ["design-level-as-flood-level"]
    );
    // A foot over our level of another flood is not our design level.
    let site = SITE.replace(
        "[[opening]]",
        "[[flood_level]]\nevent = \"0.2%\"\nlevel = \"12.0 ft NAVD88\"\nsource = \"study\"\n[[opening]]",
    );
    let rarer = "flood_level = \"13.0 ft NAVD88\"\nannual_chance = \"0.2%\"\nsource = \"a study\"";
    let rarer = reviewed(&site, rarer, &Shifts::default());
    assert_eq!(rarer.outcome(Topic::FloodLevel), "exceeds by 1.00 ft");
    assert_eq!(rarer.codes(Topic::FloodLevel), [""; 0]);
}

#[test]
fn without_freeboard_nothing_is_forgotten() {
    let site = SITE.replace("us-nfip-floodproofing", "none");
    let none = Shifts::default();
    let bare = reviewed(
        &site,
        "design_level = \"9.0 ft NAVD88\"\nfreeboard = \"0 ft\"",
        &none,
    );
    assert_eq!(bare.outcome(Topic::DesignLevel), "holds");
    assert_eq!(bare.codes(Topic::DesignLevel), [""; 0]);
    assert_eq!(bare.codes(Topic::Freeboard), [""; 0]);
    let lower = reviewed(&site, "design_level = \"8.0 ft NAVD88\"", &none);
    assert_eq!(lower.codes(Topic::DesignLevel), [""; 0]);
}

#[test]
fn a_freeboard_within_the_tolerance_explains_nothing() {
    let site = SITE.replace("0.05 ft", "0.6 ft");
    let none = Shifts::default();
    let lower = reviewed(&site, "design_level = \"8.0 ft NAVD88\"", &none);
    assert_eq!(lower.outcome(Topic::DesignLevel), "falls short by 2.00 ft");
    assert_eq!(lower.codes(Topic::DesignLevel), [""; 0]);
}

#[test]
fn in_heights() {
    // Ours is 1.9 ft.
    let forgotten = of_door("protection_height = \"0.9 ft\"");
    assert_eq!(
        forgotten.outcome(Topic::ProtectionHeight),
        "falls short by 1.00 ft"
    );
    assert_eq!(
        forgotten.codes(Topic::ProtectionHeight),
        ["freeboard-forgotten"]
    );
    let twice = of_door("protection_height = \"2.9 ft\"");
    assert_eq!(twice.codes(Topic::ProtectionHeight), ["freeboard-twice"]);
    let right = of_door("protection_height = \"1.9 ft\"");
    assert_eq!(right.codes(Topic::ProtectionHeight), [""; 0]);
}
