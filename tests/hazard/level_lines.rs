//! Layers of cross-sections and flood-level lines.

use std::path::{Path, PathBuf};

use serde_json::{Value, json};
use sillmark::hazard::{
    HazardError, LevelLine, LevelLineMap, LineKind, LineRemark, LineRole, LineSchema,
    LineStatement, read_level_lines, read_level_lines_by,
};
use sillmark::quantity::{LengthUnit, VerticalDatum, parse_elevation};

use super::fixture::feature;

/// A line across −74, 40 with the given attributes.
fn line(attributes: &Value) -> Value {
    let shape =
        json!({"type": "LineString", "coordinates": [[-74.0, 40.0, 3.5], [-74.0, 40.01, 3.5]]});
    feature(attributes, &shape)
}

fn write(folder: &Path, features: &[Value]) -> PathBuf {
    let collection = json!({"type": "FeatureCollection", "features": features});
    crate::support::write(folder, "lines.geojson", &collection.to_string())
}

fn read(
    kind: LineKind,
    statement: &LineStatement,
    features: &[Value],
) -> Result<LevelLineMap, HazardError> {
    let scratch = tempfile::tempdir().unwrap();
    let path = write(scratch.path(), features);
    read_level_lines(kind, &path, None, statement, None)
}

/// One line of the national layer's cross-sections, read without a statement.
fn section(attributes: &Value) -> LevelLine {
    let map = read(
        LineKind::CrossSections,
        &LineStatement::default(),
        &[line(attributes)],
    );
    map.unwrap().lines()[0].clone()
}

#[test]
fn a_cross_section_of_the_national_layer() {
    let read = section(&json!({
        "XS_LN_ID": "48107C_17", "WTR_NM": "Mill Brook", "XS_LTR": "B", "STREAM_STN": 1250.5,
        "WSEL_REG": 605.5, "LEN_UNIT": "FEET", "V_DATUM": "NAVD 88"
    }));
    assert_eq!(read.level, parse_elevation("605.5 ft NAVD88").ok());
    assert_eq!(read.unit, Some(LengthUnit::Foot));
    assert_eq!(read.title(), "cross-section B of Mill Brook");
    assert_eq!(read.record(), "lines, feature 48107C_17");
    assert_eq!(read.station.as_deref(), Some("1250.5"));
    assert_eq!(read.remarks, []);
}

#[test]
fn what_stands_for_no_level() {
    for none in [
        json!(-9999),
        json!(null),
        json!("-9999"),
        json!("<Null>"),
        json!(" "),
        json!("NP"),
    ] {
        let read = section(&json!({"WSEL_REG": none, "LEN_UNIT": "Feet", "V_DATUM": "NAVD88"}));
        assert_eq!(
            (read.level, read.remarks.as_slice()),
            (None, &[][..]),
            "{none}"
        );
    }
    // Legal for a section at the coast or at a confluence, and worth a word.
    let read = section(&json!({"WSEL_REG": -8888.0, "LEN_UNIT": "Feet", "V_DATUM": "NAVD88"}));
    assert_eq!(read.level, None);
    assert_eq!(
        read.remarks[0].to_string(),
        "the layer says that it has no single level (-8888)"
    );
}

#[test]
fn a_level_that_lacks_something_is_not_used() {
    for (attributes, expected) in [
        (
            json!({"WSEL_REG": 9.5, "LEN_UNIT": "Feet"}),
            "level 9.5 has no vertical datum and is not used; state it with --sections-datum",
        ),
        (
            json!({"WSEL_REG": 9.5, "V_DATUM": "NAVD88"}),
            "level 9.5 has no unit and is not used; state it with --sections-unit",
        ),
        (
            json!({"WSEL_REG": "high", "LEN_UNIT": "Feet", "V_DATUM": "NAVD88"}),
            "level \"high\" is not a number and is not used",
        ),
        (
            json!({"WSEL_REG": 48107.0, "LEN_UNIT": "Feet", "V_DATUM": "NAVD88"}),
            "level 48107 ft is not used: accepted are -300 to 15000 ft",
        ),
        (
            json!({"WSEL_REG": 9.5, "LEN_UNIT": "furlong", "V_DATUM": "NAVD88"}),
            "unit \"furlong\" is not understood; accepted: m, cm, mm, ft, in, ftUS",
        ),
    ] {
        let read = section(&attributes);
        assert_eq!(read.level, None, "{attributes}");
        assert_eq!(read.remarks[0].to_string(), expected);
    }
}

#[test]
fn what_the_layer_does_not_say_is_stated() {
    let statement = LineStatement {
        unit: Some(LengthUnit::Metre),
        datum: Some(VerticalDatum::Nap),
        level_attribute: Some("bfe".to_owned()),
        watercourse_attribute: Some("name".to_owned()),
        label_attribute: Some("letter".to_owned()),
        ..LineStatement::default()
    };
    let features = [
        line(&json!({"bfe": 12, "name": "Vecht", "letter": "C", "V_DATUM": null})),
        line(&json!({"bfe": 13, "name": "Vecht", "letter": "D", "V_DATUM": "NAVD88"})),
    ];
    let map = read(LineKind::LevelLines, &statement, &features).unwrap();
    let [stated, written] = map.lines() else {
        panic!("two lines")
    };
    assert_eq!(stated.level, parse_elevation("12 m NAP").ok());
    assert_eq!(stated.title(), "flood-level line C of Vecht");
    // The layer's own word counts, and the contradiction is told.
    assert_eq!(written.level, parse_elevation("13 m NAVD88").ok());
    assert!(matches!(
        written.remarks[0],
        LineRemark::DatumAlreadyThere { .. }
    ));
}

#[test]
fn an_attribute_that_is_not_there() {
    let features = [line(&json!({"bfe": 12, "name": "Vecht"}))];
    let error = read(LineKind::LevelLines, &LineStatement::default(), &features);
    let error = error.err().unwrap().to_string();
    assert!(
        error
            .ends_with("layer \"lines\" has no attribute \"ELEV\" (nfhl-lines); it has: bfe, name"),
        "{error}"
    );
    let statement = LineStatement {
        level_attribute: Some("bfe".to_owned()),
        watercourse_attribute: Some("river".to_owned()),
        ..LineStatement::default()
    };
    let error = read(LineKind::LevelLines, &statement, &features)
        .err()
        .unwrap()
        .to_string();
    assert!(error.contains("has no attribute \"river\""), "{error}");
}

#[test]
fn another_geometry_is_refused_and_none_is_counted() {
    let statement = LineStatement::default();
    let area =
        json!({"type": "Polygon", "coordinates": [[[-74, 40], [-73, 40], [-73, 41], [-74, 40]]]});
    let error = read(
        LineKind::LevelLines,
        &statement,
        &[feature(&json!({"ELEV": 1}), &area)],
    );
    let error = error.err().unwrap().to_string();
    assert!(
        error.contains("accepted: LINESTRING, MULTILINESTRING"),
        "{error}"
    );
    let features = [
        line(&json!({"ELEV": 1})),
        feature(&json!({"ELEV": 2}), &Value::Null),
    ];
    let map = read(LineKind::LevelLines, &statement, &features).unwrap();
    assert_eq!((map.lines().len(), map.without_shape()), (1, 1));
}

#[test]
fn the_crs_is_asked_for_by_the_right_option() {
    let far =
        json!({"type": "LineString", "coordinates": [[985_000, 200_000], [985_100, 200_000]]});
    let features = [feature(&json!({"ELEV": 1}), &far)];
    let error = read(LineKind::LevelLines, &LineStatement::default(), &features);
    let error = error.err().unwrap().to_string();
    assert!(error.contains("state it with --lines-crs"), "{error}");
    let statement = LineStatement {
        crs: Some("EPSG:2263".to_owned()),
        ..LineStatement::default()
    };
    let map = read(LineKind::LevelLines, &statement, &features).unwrap();
    assert_eq!(map.crs().definition(), "EPSG:2263");
}

#[test]
fn a_schema_of_the_users_own() {
    let text = r#"
        name = "river authority"
        title = "Sections of the river authority"
        source = "its data sheet"
        annual_chance = "0.5%"
        attributes = { level = ["stage", "STAGE_M"], watercourse = ["river"] }
        no_value = { texts = [""], numbers = [-1] }
        range = { lowest = 0, highest = 100, unit = "m" }
    "#;
    let schema = LineSchema::from_toml("own.toml", text).unwrap();
    let scratch = tempfile::tempdir().unwrap();
    let path = write(
        scratch.path(),
        &[line(&json!({"stage_m": 7.25, "river": "Vecht"}))],
    );
    let statement = LineStatement {
        unit: Some(LengthUnit::Metre),
        datum: Some(VerticalDatum::Nap),
        ..LineStatement::default()
    };
    let kind = LineKind::CrossSections;
    let map = read_level_lines_by(&schema, kind, &path, None, &statement, None).unwrap();
    assert_eq!(map.lines()[0].level, parse_elevation("7.25 m NAP").ok());
    assert_eq!(map.lines()[0].annual_chance.to_string(), "0.5 %");

    for (from, to, needle) in [
        (
            "\"0.5%\"",
            "0.005",
            "line 5: annual_chance \"0.005\": it is neither a percentage",
        ),
        (
            "level = [\"stage\", \"STAGE_M\"], ",
            "",
            "line 6: attributes.level: it is missing; accepted: the names",
        ),
        (
            "\"m\"",
            "\"furlong\"",
            "line 8: range.unit \"furlong\": it is not a unit of length",
        ),
        (
            "watercourse",
            "river_name",
            "line 6: attributes.river_name: there is no such field here",
        ),
    ] {
        let error = LineSchema::from_toml("own.toml", &text.replace(from, to)).unwrap_err();
        let error = error.to_string();
        assert!(
            error.starts_with("own.toml, line ") && error.contains(needle),
            "{error}"
        );
    }
}

#[test]
fn the_shipped_schemas() {
    let names = |kind| {
        LineSchema::nfhl(kind)
            .unwrap()
            .names(LineRole::Level)
            .to_vec()
    };
    assert_eq!(names(LineKind::CrossSections), ["WSEL_REG"]);
    assert_eq!(names(LineKind::LevelLines), ["ELEV"]);
}
