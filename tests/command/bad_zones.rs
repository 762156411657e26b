//! Zone layers that cannot be used: none of them is a dry building.

use insta::assert_snapshot;
use serde_json::json;

use super::scratch::{Scratch, zone, zone_over};
use crate::support::{copy_as, open_data};

fn zones_refused(scratch: &Scratch, layer: &str) -> String {
    scratch.refused(&["site", "site.toml", "--zones", layer])
}

#[test]
fn missing() {
    assert_snapshot!(zones_refused(&Scratch::new(), "nowhere.gpkg"), @"error: nowhere.gpkg: cannot be read: No such file or directory (os error 2); accepted: a file of one of the formats shapefile, GeoPackage, GeoJSON, FlatGeobuf, file geodatabase");
}

#[test]
fn cut_short() {
    let scratch = Scratch::new();
    // Enough features that the last of them lie behind the cut.
    let many: Vec<_> = (0..1000)
        .map(|step| {
            zone_over(
                &json!({}),
                [-74.01, 39.99, -73.99 + f64::from(step) * 1e-6, 40.01],
            )
        })
        .collect();
    scratch.zones(&many);
    copy_as(
        &scratch.path("zones.geojson"),
        "FlatGeobuf",
        &scratch.path("zones.fgb"),
    );
    let whole = std::fs::read(scratch.path("zones.fgb")).unwrap();
    for share in [1, 25, 50, 75, 99] {
        scratch.write("cut.fgb", &whole[..whole.len() * share / 100]);
        let message = zones_refused(&scratch, "cut.fgb");
        assert!(
            message.starts_with("error: cut.fgb: "),
            "{share} %: {message}"
        );
    }
    scratch.write("cut.fgb", &whole[..whole.len() / 2]);
    assert_snapshot!(zones_refused(&scratch, "cut.fgb"), @r#"error: cut.fgb: layer "zones": the last of its 1000 features cannot be read: the file is cut short"#);
}

#[test]
fn cut_text() {
    let scratch = Scratch::new();
    let whole = scratch.read("zones.geojson");
    scratch.write("zones.geojson", &whole[..whole.len() / 2]);
    assert_snapshot!(scratch.site_refused(), @"error: zones.geojson: cannot be opened: At line 1, character 50: Unterminated object; Failed to read GeoJSON data; accepted: a file of one of the formats shapefile, GeoPackage, GeoJSON, FlatGeobuf, file geodatabase");
}

#[test]
fn coordinates_beyond_degrees() {
    let scratch = Scratch::new();
    scratch.zones(&[zone_over(
        &json!({}),
        [2_087_600.0, 255_000.0, 2_088_000.0, 256_000.0],
    )]);
    assert_snapshot!(scratch.site_refused(), @r#"error: zones.geojson: layer "zones" has the longitude 2087600, but its coordinate reference system "WGS 84" is geographic: accepted are -360 to 360 degrees. If the file does not name its system (GeoJSON is then taken as WGS 84), state it with --zones-crs"#);
}

#[test]
fn plane_feet_without_a_system() {
    let Some(source) = open_data("awkward/plane_feet_without_crs.geojson") else {
        return;
    };
    let scratch = Scratch::new();
    let text = std::fs::read_to_string(source).unwrap();
    scratch.write("plane.geojson", &text);
    assert_snapshot!(zones_refused(&scratch, "plane.geojson"), @r#"error: plane.geojson: layer "plane" has no attribute "FLD_ZONE" (nfhl); it has: id, xs_id, River, Reach, RS, Name, Description, Len Left, Len Channel, Len Right, Left Bank, Right Bank, Friction Mode, Contr, Expan, Left Levee Sta, Left Levee Elev, Right Levee Sta, Right Levee Elev, HP Count, HP Start Elev, HP Vert Incr, HP LOB Slices, HP Chan Slices, HP ROB Slices, Ineff Block Mode, Obstr Block Mode, Default Centerline, Last Edited"#);
    // With a zone to read, its coordinates are looked at.
    scratch.write("plane.geojson", text.replace("\"River\"", "\"FLD_ZONE\""));
    assert_snapshot!(zones_refused(&scratch, "plane.geojson"), @r#"error: plane.geojson: layer "plane" has the longitude 6387431.1, but its coordinate reference system "WGS 84" is geographic: accepted are -360 to 360 degrees. If the file does not name its system (GeoJSON is then taken as WGS 84), state it with --zones-crs"#);
}

#[test]
fn no_attribute_that_names_the_zone() {
    let scratch = Scratch::new();
    let text = scratch.read("zones.geojson").replace("FLD_ZONE", "ZONE");
    scratch.write("zones.geojson", text);
    assert_snapshot!(scratch.site_refused(), @r#"error: zones.geojson: layer "zones" has no attribute "FLD_ZONE" (nfhl); it has: DEPTH, FLD_AR_ID, ZONE, LEN_UNIT, SFHA_TF, STATIC_BFE, V_DATUM, ZONE_SUBTY"#);
}

#[test]
fn no_such_layer() {
    assert_snapshot!(zones_refused(&Scratch::new(), "zones.geojson:zoning"), @r#"error: zones.geojson: has no layer "zoning"; it has: zones"#);
}

#[test]
fn points_for_areas() {
    let scratch = Scratch::new();
    let mut feature = zone(&json!({}));
    feature["geometry"] = json!({"type": "Point", "coordinates": [-74.0, 40.0]});
    scratch.zones(&[feature]);
    assert_snapshot!(scratch.site_refused(), @r#"error: zones.geojson: layer "zones": feature Z1: its geometry is a POINT; accepted: POLYGON, MULTIPOLYGON"#);
}

#[test]
fn a_virtual_format() {
    let scratch = Scratch::new();
    scratch.write(
        "zones.vrt",
        "<OGRVRTDataSource><OGRVRTLayer name=\"zones\"><SrcDataSource>zones.geojson</SrcDataSource></OGRVRTLayer></OGRVRTDataSource>",
    );
    assert_snapshot!(zones_refused(&scratch, "zones.vrt"), @"error: zones.vrt: cannot be opened: `zones.vrt' not recognized as being in a supported file format; accepted: a file of one of the formats shapefile, GeoPackage, GeoJSON, FlatGeobuf, file geodatabase");
}

#[test]
fn a_table() {
    let scratch = Scratch::new();
    scratch.write("zones.csv", "FLD_ZONE,STATIC_BFE\nAE,9\n");
    assert_snapshot!(zones_refused(&scratch, "zones.csv"), @"error: zones.csv: cannot be opened: `zones.csv' not recognized as being in a supported file format; accepted: a file of one of the formats shapefile, GeoPackage, GeoJSON, FlatGeobuf, file geodatabase");
}

#[test]
fn a_virtual_path() {
    let scratch = Scratch::new();
    assert_snapshot!(zones_refused(&scratch, "/vsicurl/http://localhost/zones.geojson"), @r#"error: /vsicurl/http://localhost/zones.geojson: virtual and network paths ("/vsi…", "scheme://") are not opened; accepted: a file on this machine"#);
}

#[test]
fn an_address() {
    let scratch = Scratch::new();
    assert_snapshot!(zones_refused(&scratch, "/vsicurl/http://localhost/zones.geojson"), @r#"error: /vsicurl/http://localhost/zones.geojson: virtual and network paths ("/vsi…", "scheme://") are not opened; accepted: a file on this machine"#);
}

#[test]
fn a_system_that_does_not_exist() {
    let scratch = Scratch::new();
    let message = scratch.refused(&[
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--zones-crs",
        "EPSG:99999",
    ]);
    assert_snapshot!(message, @r#"error: zones.geojson: layer "zones": "EPSG:99999" is not a coordinate reference system (PROJ: proj_create_from_database: crs not found: EPSG:99999); accepted: an authority's code such as EPSG:26918, WKT, PROJJSON or a PROJ string; state the right one with --zones-crs"#);
}

#[test]
fn an_unknown_datum_on_the_command_line() {
    let scratch = Scratch::new();
    let message = scratch.refused(&[
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--zones-datum",
        "NAVD87",
    ]);
    assert_snapshot!(message, @r#"
    error: invalid value 'NAVD87' for '--zones-datum <DATUM>': "NAVD87" is not a known vertical datum; accepted: NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703

    For more information, try '--help'.
    "#);
}
