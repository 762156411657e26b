//! Heights that stand on different datums, or on none.

use insta::assert_snapshot;
use serde_json::json;

use super::scratch::{Scratch, zone};

#[test]
fn an_elevation_without_a_datum() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "8.1 ft");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "8.1 ft": it has no vertical datum; accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn an_unknown_datum() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "8.1 ft NAVD87");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "8.1 ft NAVD87": "NAVD87" is not a known vertical datum (those are NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703); accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn a_threshold_on_a_tidal_datum() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "8.1 ft MLLW");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "8.1 ft MLLW": MLLW is another surface at each tide gauge; accepted: the height converted to one of NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703"#);
}

#[test]
fn threshold_against_zones() {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", "2.470 m NGVD29");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "2.470 m NGVD29": it is on NGVD29, but the flood level (level of the zone, zones, feature Z1) is on NAVD88: heights on two datums cannot be compared, and NAVD88 to NGVD29 at longitude -74, latitude 40 needs us_noaa_vertcone.tif (https://cdn.proj.org/us_noaa_vertcone.tif), not found in grids; accepted: every file it needs in a folder named by --grids, SILLMARK_GRIDS or PROJ_DATA; or the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as "NAVD88 -> NGVD29 = -1.1 ft""#);
}

#[test]
fn a_zone_on_a_tidal_datum() {
    let scratch = Scratch::new();
    scratch.zones(&[zone(&json!({"V_DATUM": "LOCAL TIDAL DATUM"}))]);
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "8.10 ft NAVD88": it is on NAVD88, but the flood level (level of the zone, zones, feature Z1) is on LOCAL TIDAL DATUM: heights on two datums cannot be compared, and LOCAL TIDAL DATUM is another surface at each tide gauge, so no grid converts LOCAL TIDAL DATUM to NAVD88; accepted: the offset at the gauge with its source (--datum-offset, or [[datum_offset]] in the site file), such as "LOCAL TIDAL DATUM -> NAVD88 = -1.1 ft""#);
}

#[test]
fn two_zones_on_two_datums_are_not_ranked_by_the_one_that_fits() {
    let scratch = Scratch::new();
    scratch.zones(&[
        zone(&json!({})),
        zone(&json!({"FLD_AR_ID": "Z2", "STATIC_BFE": 12, "V_DATUM": "NGVD29"})),
    ]);
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "8.10 ft NAVD88": it is on NAVD88, but the flood level (level of the zone, zones, feature Z2) is on NGVD29: heights on two datums cannot be compared, and NGVD29 to NAVD88 at longitude -74, latitude 40 needs us_noaa_vertcone.tif (https://cdn.proj.org/us_noaa_vertcone.tif), not found in grids; accepted: every file it needs in a folder named by --grids, SILLMARK_GRIDS or PROJ_DATA; or the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as "NGVD29 -> NAVD88 = -1.1 ft""#);
}

#[test]
fn threshold_against_terrain() {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269", |_, _| 2.0);
    let message = scratch.refused(&[
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--dem",
        "dem.tif",
        "--dem-unit",
        "m",
        "--dem-datum",
        "NGVD29",
    ]);
    assert_snapshot!(message, @r#"error: site.toml, line 3: threshold "8.10 ft NAVD88": it is on NAVD88, but the terrain dem.tif is on NGVD29: heights on two datums cannot be compared, and NGVD29 to NAVD88 at longitude -74, latitude 40 needs us_noaa_vertcone.tif (https://cdn.proj.org/us_noaa_vertcone.tif), not found in grids; accepted: every file it needs in a folder named by --grids, SILLMARK_GRIDS or PROJ_DATA; or the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as "NGVD29 -> NAVD88 = -1.1 ft""#);
}

#[test]
fn sill_against_threshold() {
    let scratch = Scratch::new();
    scratch.site_and("sill = \"8 ft NGVD29\"");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 10: opening.sill "8 ft NGVD29": it is on NGVD29, the threshold on NAVD88: heights on two datums cannot be compared; accepted: the same height converted to NAVD88"#);
}

#[test]
fn stated_level_against_threshold() {
    let scratch = Scratch::new();
    scratch
        .site_and("[[flood_level]]\nevent = \"1%\"\nlevel = \"9 ft NGVD29\"\nsource = \"study\"");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 3: threshold "8.10 ft NAVD88": it is on NAVD88, but the flood level (stated by the user, study) is on NGVD29: heights on two datums cannot be compared, and NGVD29 to NAVD88 at longitude -74, latitude 40 needs us_noaa_vertcone.tif (https://cdn.proj.org/us_noaa_vertcone.tif), not found in grids; accepted: every file it needs in a folder named by --grids, SILLMARK_GRIDS or PROJ_DATA; or the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as "NGVD29 -> NAVD88 = -1.1 ft""#);
}

#[test]
fn stated_grade_against_threshold() {
    let scratch = Scratch::new();
    scratch.site_with(
        "occupancy",
        "lowest_adjacent_grade = \"7 ft NGVD29\"\noccupancy",
    );
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 4: lowest_adjacent_grade "7 ft NGVD29": it is on NGVD29, the threshold on NAVD88: heights on two datums cannot be compared; accepted: the same height converted to NAVD88"#);
}
