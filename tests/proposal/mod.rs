//! What somebody proposes, as it is read.

use sillmark::design::Occupancy;
use sillmark::load::RiskCategory;
use sillmark::proposal::{MeasuredFrom, Proposal, ProposedLeakage};
use sillmark::quantity::VerticalDatum;
use sillmark::quantity::unit::{foot, hour, in_pounds_per_foot, minute};
use sillmark::site::{WallKind, Waves};

const WHOLE: &str = r#"
name = "Offer 9"
flood_level = "9.2 ft NGVD29"
annual_chance = "1 in 100"
freeboard = "1 ft"
design_level = "10.2 ft NGVD29"
source = "county study of 2006"
occupancy = "residential"
compliance = true
leakage = "0.5 gal/h/ft"
warning = "12 h"
fitting_time = "45 min"
[[opening]]
id = "front door"
sill = "8.1 ft NAVD88"
ground = "7 ft NAVD88"
protection_height = "2.1 ft"
barrier_height = "2 ft 6 in"
measured_from = "ground"
planks = 5
plank_height = "6 in"
posts = 2
intermediate_posts = 0
span = "36 in"
wall = "frame"
[opening.load]
depth = "2.1 ft"
waves = "breaking"
risk_category = "III"
pressure = "131 psf"
force_per_width = "137.6 lb/ft"
moment_per_width = "96.3 ft-lb/ft"
force = "413 lb"
"#;

#[test]
fn every_field() {
    let proposal = Proposal::from_toml("offer.toml", WHOLE).unwrap();
    assert_eq!(proposal.name.as_deref(), Some("Offer 9"));
    let level = proposal.flood_level.unwrap();
    assert_eq!(level.value.datum(), VerticalDatum::Ngvd29);
    assert_eq!(level.place.to_string(), "offer.toml, line 3");
    assert!((level.last_digit - 0.03048).abs() < 1e-9);
    assert!((proposal.annual_chance.unwrap().probability() - 0.01).abs() < 1e-12);
    assert!((proposal.freeboard.unwrap().value.get::<foot>() - 1.0).abs() < 1e-12);
    assert_eq!(proposal.design_level.unwrap().text, "10.2 ft NGVD29");
    assert_eq!(proposal.source.as_deref(), Some("county study of 2006"));
    assert_eq!(proposal.occupancy, Some(Occupancy::Residential));
    assert_eq!(proposal.compliance, Some(true));
    assert!(matches!(proposal.leakage, Some(ProposedLeakage::Rate(_))));
    assert!((proposal.warning.unwrap().value.get::<hour>() - 12.0).abs() < 1e-12);
    assert!((proposal.fitting_time.unwrap().value.get::<minute>() - 45.0).abs() < 1e-12);
    let door = &proposal.openings[0];
    assert_eq!(door.id.as_deref(), Some("front door"));
    assert_eq!(door.sill.as_ref().unwrap().text, "8.1 ft NAVD88");
    assert_eq!(door.ground.as_ref().unwrap().text, "7 ft NAVD88");
    assert_eq!(door.protection_height.as_ref().unwrap().text, "2.1 ft");
    assert!((door.barrier_height.as_ref().unwrap().last_digit - 0.0254).abs() < 1e-12);
    assert_eq!(door.measured_from, Some(MeasuredFrom::Ground));
    assert_eq!((door.planks, door.posts), (Some(5), Some(2)));
    assert_eq!(door.intermediate_posts, Some(0));
    assert_eq!(door.plank_height.as_ref().unwrap().text, "6 in");
    assert_eq!(door.span.as_ref().unwrap().text, "36 in");
    assert_eq!(door.wall, Some(WallKind::Frame));
    let load = &door.load;
    assert_eq!(load.waves, Some(Waves::Breaking));
    assert_eq!(load.risk_category, Some(RiskCategory::III));
    assert_eq!(load.depth.as_ref().unwrap().text, "2.1 ft");
    assert_eq!(load.pressure.as_ref().unwrap().text, "131 psf");
    let force = load.force_per_width.as_ref().unwrap();
    assert!((in_pounds_per_foot(force.value) - 137.6).abs() < 1e-9);
    assert_eq!(
        load.moment_per_width.as_ref().unwrap().text,
        "96.3 ft-lb/ft"
    );
    assert_eq!(load.force.as_ref().unwrap().text, "413 lb");
}

#[test]
fn every_field_may_be_left_out() {
    let nothing = Proposal::from_toml("offer.toml", "").unwrap();
    assert!(nothing.flood_level.is_none() && nothing.openings.is_empty());
    // Each line alone is a proposal, too.
    let (root, rest) = WHOLE.split_once("[[opening]]").unwrap();
    let (opening, load) = rest.split_once("[opening.load]").unwrap();
    for line in root.lines() {
        Proposal::from_toml("offer.toml", line).unwrap();
    }
    for line in opening.lines() {
        Proposal::from_toml("offer.toml", &format!("[[opening]]\n{line}")).unwrap();
    }
    for line in load.lines() {
        let text = format!("[[opening]]\n[opening.load]\n{line}");
        Proposal::from_toml("offer.toml", &text).unwrap();
    }
}

#[test]
fn leakage_in_either_way() {
    let leakage = |text: &str| {
        let text = format!("leakage = {text:?}");
        Proposal::from_toml("offer.toml", &text).map(|proposal| proposal.leakage.unwrap())
    };
    assert!(matches!(leakage("6 L/h/m"), Ok(ProposedLeakage::Rate(_))));
    assert!(matches!(leakage("40 gal/h"), Ok(ProposedLeakage::Total(_))));
    let error = leakage("40 gal").unwrap_err().to_string();
    assert!(
        error.starts_with("offer.toml, line 1: leakage \"40 gal\": \"gal\" is not a unit of flow")
            && error.contains("a flow per length of seal such as"),
        "{error}"
    );
}

#[test]
fn what_cannot_be_used_is_named() {
    for (text, message) in [
        (
            "flod_level = \"9 ft NAVD88\"",
            "offer.toml, line 1: flod_level: there is no such field here; perhaps flood_level is meant; accepted: name, flood_level,",
        ),
        (
            "[[opening]]\nbarier_height = \"3 ft\"",
            "offer.toml, line 2: opening.barier_height: there is no such field here; perhaps barrier_height is meant;",
        ),
        (
            "[[opening]]\n[opening.load]\ncolour = \"red\"",
            "offer.toml, line 3: load.colour: there is no such field here; accepted: depth,",
        ),
        (
            "flood_level = \"9 ft\"",
            "offer.toml, line 1: flood_level \"9 ft\": it has no vertical datum; accepted: a height with its unit and vertical datum",
        ),
        (
            "freeboard = \"-1 ft\"",
            "offer.toml, line 1: freeboard \"-1 ft\": it is negative; accepted:",
        ),
        (
            "[[opening]]\nplanks = 2.5",
            "offer.toml, line 2: opening.planks \"2.5\": it is not a count; accepted: a whole number from 0 to 1000",
        ),
        (
            "[[opening]]\nplanks = 4000000000000",
            "it is not a count; accepted: a whole number from 0 to 1000",
        ),
        (
            "[[opening]]\nmeasured_from = \"lintel\"",
            "offer.toml, line 2: opening.measured_from \"lintel\": it is not one of the choices; accepted: sill, ground",
        ),
        (
            "compliance = \"yes\"",
            "offer.toml, line 1: compliance \"yes\": it is not one of the choices; accepted: true, false",
        ),
        (
            "[[opening]]\nid = \"door\"\n[[opening]]\nid = \"door\"",
            "offer.toml, line 4: opening.id \"door\": another opening has the same id; accepted: a different id for each opening",
        ),
        (
            "[[opening]]\nid = \" \"",
            "offer.toml, line 2: opening.id \" \": it is blank; accepted: a text",
        ),
        ("opening = 3", "it is not a list of tables"),
        (
            "[[opening]]\n[opening.load]\nforce_per_width = \"138 psf\"",
            "offer.toml, line 3: load.force_per_width \"138 psf\": \"psf\" is not a unit of force per width (those are lb/ft,",
        ),
        ("name = ", "offer.toml, line 1: text"),
    ] {
        let error = Proposal::from_toml("offer.toml", text)
            .unwrap_err()
            .to_string();
        assert!(error.contains(message), "{error}");
    }
}
