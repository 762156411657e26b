//! Reviews of proposals that state what published examples print: what is printed holds, and a
//! slip with it is found.

use sillmark::quantity::LengthUnit::Foot;
use sillmark::quantity::VerticalDatum;
use sillmark::review::{DatumSlip, Finding, KnownShift, LoadSlip, Shifts, Topic};

use super::review_fixture::{SITE, feet, reviewed};

/// T. B. Quimby, A Beginner's Guide to ASCE 7-10, section 6.7.1 (rev. 11/04/2014): base flood
/// at 54 ft, grade at 50 ft, 1 ft of erosion and scour, salt water of 64.0 pcf, a wall 20 ft
/// long. It prints a depth of 5.0 ft, 320 psf, 800 lb/ft, 16.0 kips, 3 ft 4 in below the
/// surface.
const WALL: &str = r#"name = "Wall of the example"
location = { longitude = -74.0, latitude = 40.0 }
threshold = "49 ft NAVD88"
rule = "none"
[water]
salinity = "salt"
[[flood_level]]
event = "1%"
level = "54 ft NAVD88"
standard_deviation = "0.01 ft"
source = "given in the example"
[[opening]]
id = "wall"
width = "20 ft"
"#;

fn wall(load: &str) -> super::review_fixture::Reviewed {
    let text = format!(
        "flood_level = \"54.00 ft NAVD88\"\nsource = \"the example\"\n[[opening]]\nid = \"wall\"\nprotection_height = \"5.00 ft\"\n[opening.load]\ndepth = \"5.00 ft\"\n{load}"
    );
    reviewed(WALL, &text, &Shifts::default())
}

#[test]
fn the_printed_loads_of_a_wall_hold() {
    // Its moment is 800 lb/ft at 5 ft less 3 ft 4 in: 1333 ft-lb/ft.
    let printed = wall(
        "pressure = \"320 psf\"\nforce_per_width = \"800 lb/ft\"\nforce = \"16.0 kip\"\nmoment_per_width = \"1333 ft-lb/ft\"",
    );
    for topic in [
        Topic::FloodLevel,
        Topic::ProtectionHeight,
        Topic::LoadDepth,
        Topic::Pressure,
        Topic::ForcePerWidth,
        Topic::Force,
        Topic::MomentPerWidth,
    ] {
        assert_eq!(printed.outcome(topic), "holds", "{}", topic.code());
        assert_eq!(printed.codes(topic), [""; 0], "{}", topic.code());
    }
}

#[test]
fn depth_in_the_place_of_its_square_is_found_in_them() {
    // 64.0 · 5 / 2 = 160 lb/ft.
    let slip = wall("force_per_width = \"160 lb/ft\"");
    assert_eq!(
        slip.outcome(Topic::ForcePerWidth),
        "falls short by 640.0 lb/ft"
    );
    let found = &slip.point(Topic::ForcePerWidth).findings;
    assert!(
        matches!(
            found.as_slice(),
            [Finding::Load {
                slip: LoadSlip::DepthForSquare(Foot),
                ..
            }]
        ),
        "{found:?}"
    );
}

/// Memorandum of Redwood City, California, April 2008 (`WebLink` 41763, page 94): in San Mateo
/// County NAVD88 = NGVD29 + 2.75 ft, so that 10.00 ft NGVD29 is 12.75 ft NAVD88.
#[test]
fn a_published_offset_that_was_not_applied() {
    let site = SITE
        .replace("level = \"9 ft", "level = \"12.75 ft")
        .replace("8.1 ft NAVD88", "11.8 ft NAVD88")
        .replace("6 ft NAVD88", "10 ft NAVD88");
    let shifts = Shifts {
        known: vec![KnownShift {
            from: VerticalDatum::Ngvd29,
            to: VerticalDatum::Navd88,
            shift: feet(2.75),
            sd: None,
            source: "Redwood City memo, April 2008".to_owned(),
        }],
        unknown: Vec::new(),
    };
    let of = |level: &str| {
        let text = format!("flood_level = \"{level}\"\nsource = \"a study\"");
        reviewed(&site, &text, &shifts)
    };
    assert_eq!(of("10.00 ft NGVD29").outcome(Topic::FloodLevel), "holds");
    let mixed = of("10.00 ft NAVD88");
    assert_eq!(mixed.outcome(Topic::FloodLevel), "falls short by 2.75 ft");
    let found = &mixed.point(Topic::FloodLevel).findings;
    assert!(
        matches!(
            found.as_slice(),
            [Finding::DatumShift {
                slip: DatumSlip::NotApplied,
                ..
            }]
        ),
        "{found:?}"
    );
}

/// FEMA's glossary, floodproofing certificate: full rating credit only one foot above the base
/// flood; the level of the base flood itself is the least of 44 CFR 60.3(c)(3).
#[test]
fn a_foot_over_the_base_flood_for_full_credit() {
    let of = |rule: &str, level: &str| {
        let site = SITE.replace("us-nfip-floodproofing", rule);
        let text = format!("design_level = \"{level}\"");
        reviewed(&site, &text, &Shifts::default()).outcome(Topic::DesignLevel)
    };
    assert_eq!(of("us-nfip-floodproofing", "10.00 ft NAVD88"), "holds");
    assert_eq!(
        of("us-nfip-floodproofing", "9.00 ft NAVD88"),
        "falls short by 1.00 ft"
    );
    assert_eq!(of("us-nfip-minimum", "9.00 ft NAVD88"), "holds");
}
