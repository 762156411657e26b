//! What the attributes of a feature mean.

use serde_json::{Value, json};
use sillmark::hazard::{Zone, ZoneClass, ZoneRemark, ZoneStatement, read_zones};
use sillmark::quantity::{LengthUnit, VerticalDatum};

use super::fixture::{attributes, feature, layer, polygon, square};

/// The zone that a feature with these attributes becomes, read from a file.
fn zone_stating(pairs: &[(&str, Value)], statement: &ZoneStatement) -> Zone {
    let scratch = tempfile::tempdir().unwrap();
    let geometry = polygon(&[square(0.0, 0.0, 0.1)]);
    let path = layer(scratch.path(), &[feature(&attributes(pairs), &geometry)]);
    let map = read_zones(&path, None, statement, None).unwrap();
    map.zones().next().unwrap().0.clone()
}

fn zone(pairs: &[(&str, Value)]) -> Zone {
    zone_stating(pairs, &ZoneStatement::default())
}

fn class(code: &str, subtype: &str) -> ZoneClass {
    zone(&[("FLD_ZONE", json!(code)), ("ZONE_SUBTY", json!(subtype))]).class
}

#[test]
fn codes_and_subtypes() {
    use ZoneClass::{
        Approximate, BehindLevee, CoastalWave, Detailed, Floodway, Limited, Minimal, Rare,
        SheetFlow, Unknown, Unspecified,
    };
    for (code, subtype, expected) in [
        ("VE", "", CoastalWave),
        ("V", "", CoastalWave),
        ("V17", "", CoastalWave),
        ("VE", "RIVERINE FLOODWAY SHOWN IN COASTAL ZONE", CoastalWave),
        ("AE", "FLOODWAY", Floodway),
        ("A", "FLOODWAY", Floodway),
        ("AE", "RIVERINE FLOODWAY SHOWN IN COASTAL ZONE", Floodway),
        ("AE", "", Detailed),
        ("AE", "COASTAL FLOODPLAIN", Detailed),
        ("ae", "", Detailed),
        ("A12", "", Detailed),
        ("AH", "", Detailed),
        ("AO", "", SheetFlow),
        ("A", "", Approximate),
        ("A99", "", Approximate),
        ("AR", "", Approximate),
        ("D", "", Unknown),
        ("AREA NOT INCLUDED", "", Unknown),
        ("OPEN WATER", "", Unknown),
        (
            "X",
            "AREA WITH REDUCED FLOOD HAZARD DUE TO ACCREDITED LEVEE SYSTEM",
            BehindLevee,
        ),
        (
            "X",
            "AREA WITH REDUCED FLOOD RISK DUE TO LEVEE",
            BehindLevee,
        ),
        ("X", "1 PCT DEPTH LESS THAN 1 FOOT", Limited),
        ("X", "1 PCT DRAINAGE AREA LESS THAN 1 SQUARE MILE", Limited),
        ("X", "1 PCT FUTURE CONDITIONS", Limited),
        ("X", "0.2 PCT ANNUAL CHANCE FLOOD HAZARD", Rare),
        ("B", "", Rare),
        ("X", "", Unspecified),
        ("X", "<Null>", Unspecified),
        ("X", "AREA OF MINIMAL FLOOD HAZARD", Minimal),
        ("C", "", Minimal),
        // Never dry what is not known.
        ("", "", Unknown),
        (" ", "", Unknown),
        ("A31", "", Unknown),
        ("X500", "", Unknown),
        ("Zone 3", "", Unknown),
        ("X", "SOMETHING NEW", Unknown),
    ] {
        assert_eq!(class(code, subtype), expected, "{code:?} {subtype:?}");
    }
    assert_eq!(zone(&[("FLD_ZONE", Value::Null)]).class, Unknown);
}

#[test]
fn old_codes_and_unknown_ones_are_remarked_on() {
    let old = zone(&[("FLD_ZONE", json!("A7"))]);
    let legacy = ZoneRemark::Legacy {
        code: "A7".into(),
        today: "AE".into(),
    };
    assert_eq!(old.remarks, [legacy]);
    let unknown = zone(&[("FLD_ZONE", json!("Q"))]);
    assert!(matches!(
        unknown.remarks[..],
        [ZoneRemark::UnknownZone { .. }]
    ));
}

/// A detailed zone with a level, some attribute replaced.
fn level(replaced: &[(&str, Value)]) -> Zone {
    let mut pairs = vec![
        ("FLD_ZONE", json!("AE")),
        ("STATIC_BFE", json!(9.0)),
        ("V_DATUM", json!("NAVD88")),
        ("LEN_UNIT", json!("Feet")),
    ];
    for (name, value) in replaced {
        pairs.retain(|(there, _)| there != name);
        pairs.push((name, value.clone()));
    }
    zone(&pairs)
}

fn feet(zone: &Zone) -> Option<f64> {
    zone.level
        .map(|level| LengthUnit::Foot.read(level.height()))
}

#[test]
fn a_level_with_all_it_needs() {
    for (replaced, expected) in [
        (vec![], 9.0),
        (vec![("STATIC_BFE", json!("9.5"))], 9.5),
        (vec![("STATIC_BFE", json!(" 12 "))], 12.0),
        (vec![("STATIC_BFE", json!(0.0))], 0.0),
        (vec![("STATIC_BFE", json!(-3))], -3.0),
        (vec![("LEN_UNIT", json!("FEET"))], 9.0),
        (vec![("LEN_UNIT", json!("Meters"))], 9.0 / 0.3048),
        (vec![("V_DATUM", json!("NAVD 88"))], 9.0),
    ] {
        let zone = level(&replaced);
        let found = feet(&zone).unwrap();
        assert!((found - expected).abs() < 1e-9, "{replaced:?}: {found}");
        assert_eq!(zone.level.unwrap().datum(), VerticalDatum::Navd88);
        assert!(
            zone.remarks.is_empty() && zone.level_expected,
            "{replaced:?}"
        );
    }
}

#[test]
fn every_way_to_say_none() {
    for none in [
        json!(-9999.0),
        json!(-9999),
        json!(-8888),
        json!("-9999"),
        json!("-8888"),
        json!(""),
        json!(" "),
        json!("<Null>"),
        json!("NP"),
        Value::Null,
    ] {
        let zone = level(&[("STATIC_BFE", none.clone()), ("V_DATUM", Value::Null)]);
        assert_eq!((zone.level, zone.remarks), (None, vec![]), "{none}");
    }
    // An attribute that only other features have is unset, which GDAL reads as zero.
    let zone = zone(&[("FLD_ZONE", json!("AE"))]);
    assert_eq!(zone.level, None);
}

#[test]
fn an_attribute_that_one_feature_lacks_is_not_zero() {
    let scratch = tempfile::tempdir().unwrap();
    let geometry = polygon(&[square(0.0, 0.0, 0.1)]);
    let full =
        json!({"FLD_ZONE": "AE", "STATIC_BFE": 9.0, "V_DATUM": "NAVD88", "LEN_UNIT": "Feet"});
    let bare = json!({"FLD_ZONE": "AE", "V_DATUM": "NAVD88", "LEN_UNIT": "Feet"});
    let path = layer(
        scratch.path(),
        &[feature(&full, &geometry), feature(&bare, &geometry)],
    );
    let map = read_zones(&path, None, &ZoneStatement::default(), None).unwrap();
    let levels: Vec<_> = map.zones().map(|(zone, _)| zone.level.is_some()).collect();
    assert_eq!(levels, [true, false]);
}

#[test]
fn a_level_that_lacks_something_is_refused_unless_it_is_stated() {
    let without_datum = [
        ("FLD_ZONE", json!("AE")),
        ("STATIC_BFE", json!(9.0)),
        ("LEN_UNIT", json!("Feet")),
        ("V_DATUM", json!("NP")),
    ];
    let refused = zone(&without_datum);
    assert_eq!(refused.level, None);
    assert_eq!(
        refused.remarks,
        [ZoneRemark::LevelWithoutDatum { value: "9".into() }]
    );
    let stated = ZoneStatement {
        datum: Some(VerticalDatum::Ngvd29),
        ..ZoneStatement::default()
    };
    let given = zone_stating(&without_datum, &stated);
    assert_eq!(given.level.unwrap().datum(), VerticalDatum::Ngvd29);
    assert!(given.remarks.is_empty());

    let without_unit = level(&[("LEN_UNIT", Value::Null)]);
    assert_eq!(without_unit.level, None);
    assert!(without_unit.remarks[0].to_string().contains("--zones-unit"));
    let odd = level(&[
        ("V_DATUM", json!("CITY DATUM")),
        ("LEN_UNIT", json!("Cubits")),
    ]);
    assert_eq!((odd.level, odd.remarks.len()), (None, 2));
}

#[test]
fn what_the_layer_says_wins_over_what_is_stated_and_is_said() {
    let stated = ZoneStatement {
        datum: Some(VerticalDatum::Ngvd29),
        ..ZoneStatement::default()
    };
    let pairs = [
        ("FLD_ZONE", json!("AE")),
        ("STATIC_BFE", json!(9.0)),
        ("LEN_UNIT", json!("Feet")),
        ("V_DATUM", json!("NAVD88")),
    ];
    let zone = zone_stating(&pairs, &stated);
    assert_eq!(zone.level.unwrap().datum(), VerticalDatum::Navd88);
    assert!(matches!(
        zone.remarks[..],
        [ZoneRemark::DatumAlreadyThere { .. }]
    ));
}

#[test]
fn numbers_out_of_range_are_refused() {
    for (name, value) in [
        ("STATIC_BFE", json!(15001)),
        ("STATIC_BFE", json!(-301)),
        ("STATIC_BFE", json!("9 ft")),
        ("DEPTH", json!(31)),
        ("DEPTH", json!(-1)),
        // An area in a depth field, as one county has it.
        ("DEPTH", json!(2_874_331.5)),
    ] {
        let zone = level(&[(name, value.clone())]);
        assert_eq!(zone.remarks.len(), 1, "{name} {value}: {:?}", zone.remarks);
        if name == "DEPTH" {
            assert_eq!((zone.depth, feet(&zone).map(f64::round)), (None, Some(9.0)));
        } else {
            assert_eq!(zone.level, None, "{value}");
        }
    }
}

#[test]
fn depth_and_velocity_of_sheet_flow() {
    let with = |depth: f64, velocity: f64| {
        zone(&[
            ("FLD_ZONE", json!("AO")),
            ("DEPTH", json!(depth)),
            ("LEN_UNIT", json!("Feet")),
            ("VELOCITY", json!(velocity)),
            ("VEL_UNIT", json!("Feet/Second")),
        ])
    };
    let flowing = with(2.0, 5.0);
    assert!((flowing.depth.unwrap().value - 0.6096).abs() < 1e-12);
    assert!((flowing.velocity.unwrap().value - 1.524).abs() < 1e-12);
    assert!(!flowing.level_expected);
    let none = with(0.0, 0.0);
    assert_eq!(
        (none.depth, none.velocity, none.remarks),
        (None, None, vec![])
    );
    let unknown_unit = zone(&[
        ("FLD_ZONE", json!("AO")),
        ("VELOCITY", json!(5.0)),
        ("VEL_UNIT", Value::Null),
    ]);
    assert_eq!(
        (unknown_unit.velocity, unknown_unit.remarks.len()),
        (None, 1)
    );
}

#[test]
fn a_flag_that_contradicts_the_zone_is_remarked_on() {
    let flagged =
        |code: &str, flag: &str| zone(&[("FLD_ZONE", json!(code)), ("SFHA_TF", json!(flag))]);
    assert!(flagged("AE", "T").remarks.is_empty());
    assert!(flagged("X", "F").remarks.is_empty());
    let slipped = flagged("AE", "F");
    assert_eq!(
        (slipped.class, slipped.remarks.len()),
        (ZoneClass::Detailed, 1)
    );
    let slipped = flagged("X", "T");
    assert_eq!(
        (slipped.class, slipped.remarks.len()),
        (ZoneClass::Unknown, 1)
    );
}

#[test]
fn a_level_where_none_belongs_is_remarked_on() {
    let zone = level(&[
        ("FLD_ZONE", json!("X")),
        ("ZONE_SUBTY", json!("AREA OF MINIMAL FLOOD HAZARD")),
    ]);
    assert!(matches!(
        zone.remarks[..],
        [ZoneRemark::UnexpectedLevel { .. }]
    ));
}
