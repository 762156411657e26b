//! Coordinates in the systems that tables come in.

use insta::assert_snapshot;

use super::{Answers, HEADER, alder_lock, with_maps};

const XY: &str = "id,x,y,threshold,threshold_unit,vertical_datum\n";

#[test]
fn x_and_y_need_their_system() {
    let scratch = alder_lock();
    scratch.write(
        "t.csv",
        format!("{XY}mill,462650,5294120,612.9,ft,NAVD88\n"),
    );
    assert_snapshot!(scratch.refused(&with_maps("t.csv", &[])), @"error: t.csv: columns x, y: their coordinate system is not stated; accepted: option --crs, such as --crs EPSG:26915, or columns longitude and latitude");
}

#[test]
fn another_geographic_system() {
    let scratch = alder_lock();
    let row = "mill,-87.498762,47.799353,612.9,ft,NAVD88\n";
    scratch.write("t.csv", format!("{HEADER}{row}"));
    let wgs84 = scratch.portfolio("t.csv", &[]);
    let explicit = scratch.portfolio("t.csv", &["--crs", "EPSG:4326"]);
    let nad83 = scratch.portfolio("t.csv", &["--crs", "EPSG:4269"]);
    for answers in [&explicit, &nad83] {
        assert_eq!(answers.get(0, "longitude"), "-87.498762");
        assert_eq!(answers.get(0, "ground_m"), wgs84.get(0, "ground_m"));
        assert_eq!(answers.get(0, "zone"), "AE");
    }
}

/// A place that no map holds, never an answer of another place.
#[test]
fn north_before_east() {
    let scratch = alder_lock();
    scratch.write(
        "t.csv",
        format!("{XY}mill,5294120,462650,612.9,ft,NAVD88\nfar,1e9,2e9,612.9,ft,NAVD88\n"),
    );
    let outcome = scratch.run_portfolio("t.csv", &["--crs", "EPSG:26916"]);
    let answers = Answers::read(&outcome.stdout);
    assert_eq!(answers.column("verdict"), ["unresolved"]);
    assert_eq!(answers.column("zone"), [""]);
    assert_snapshot!(outcome.stderr, @r#"rejected: t.csv, line 3: x, y "1e9 2e9": x 1000000000, y 2000000000 of "NAD83 / UTM zone 16N" is no place (The projection failed with the following error: Point outside of projection domain); accepted: coordinates of a place in the table's system (option --crs), east first"#);
    // Degrees the wrong way round, where a latitude beyond the pole shows it.
    scratch.write(
        "d.csv",
        format!("{HEADER}mill,47.8,-95.5,612.9,ft,NAVD88\n"),
    );
    assert_snapshot!(scratch.run_portfolio("d.csv", &[]).stderr, @r#"rejected: d.csv, line 2: longitude, latitude "47.8 -95.5": latitude -95.5 is not between -90 and 90 degrees; accepted: coordinates of a place in the table's system (option --crs), east first"#);
}

#[test]
fn a_system_that_does_not_exist() {
    let scratch = alder_lock();
    scratch.write(
        "t.csv",
        format!("{XY}mill,462650,5294120,612.9,ft,NAVD88\n"),
    );
    assert_snapshot!(scratch.refused(&with_maps("t.csv", &["--crs", "EPSG:999999"])), @r#"error: option --crs: "EPSG:999999" is not a coordinate reference system (PROJ: proj_create_from_database: crs not found: EPSG:999999); accepted: an authority's code such as EPSG:26918, WKT, PROJJSON or a PROJ string"#);
}
