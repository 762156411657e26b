//! Terrain that cannot be used.

use insta::assert_snapshot;

use super::scratch::Scratch;
use crate::support::open_data;

fn refused(scratch: &Scratch, dem: &[&str]) -> String {
    scratch.refused(
        &[
            &["site", "site.toml", "--zones", "zones.geojson", "--dem"],
            dem,
        ]
        .concat(),
    )
}

/// A raster that says neither unit nor datum, over the house.
fn plain() -> Scratch {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269", |_, _| 2.0);
    scratch
}

const STATED: [&str; 5] = ["dem.tif", "--dem-unit", "m", "--dem-datum", "NAVD88"];

#[test]
fn missing() {
    assert_snapshot!(refused(&Scratch::new(), &["nowhere.tif"]), @"error: nowhere.tif: cannot be read: No such file or directory (os error 2); accepted: a file of one of the formats GeoTIFF, Arc/Info ASCII grid");
}

#[test]
fn cut_short() {
    let scratch = plain();
    let whole = std::fs::read(scratch.path("dem.tif")).unwrap();
    scratch.write("dem.tif", &whole[..whole.len() / 2]);
    assert_snapshot!(refused(&scratch, &STATED), @"error: dem.tif: reading failed: TIFFReadEncodedStrip:Read error at scanline 4294967295; got 3802 bytes, expected 8000; TIFFReadEncodedStrip() failed; dem.tif, band 1: IReadBlock failed at X offset 0, Y offset 2: TIFFReadEncodedStrip() failed: the file is damaged or cut short; accepted: a whole file");
}

#[test]
fn no_unit() {
    assert_snapshot!(refused(&plain(), &["dem.tif"]), @"error: dem.tif: does not state its vertical unit; state it with --dem-unit (accepted: m, cm, mm, ft, in, ftUS)");
}

#[test]
fn no_datum() {
    assert_snapshot!(refused(&plain(), &["dem.tif", "--dem-unit", "m"]), @"error: dem.tif: does not state its vertical datum; state it with --dem-datum (accepted: NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703)");
}

#[test]
fn a_datum_against_the_file() {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269+5703", |_, _| 2.0);
    assert_snapshot!(refused(&scratch, &["dem.tif", "--dem-datum", "NGVD29"]), @r#"error: dem.tif: states its vertical datum as "NAVD88", but --dem-datum says "NGVD29"; accepted: --dem-datum with what the file states"#);
}

#[test]
fn a_unit_against_the_file() {
    let scratch = Scratch::new();
    scratch.dem("dem.tif", "EPSG:4269+5703", |_, _| 2.0);
    assert_snapshot!(refused(&scratch, &["dem.tif", "--dem-unit", "ft"]), @r#"error: dem.tif: states its vertical unit as "m", but --dem-unit says "ft"; accepted: --dem-unit with what the file states"#);
}

#[test]
fn an_unknown_unit() {
    assert_snapshot!(refused(&plain(), &["dem.tif", "--dem-unit", "furlong"]), @r#"
    error: invalid value 'furlong' for '--dem-unit <UNIT>': "furlong" is not a unit of length; accepted: m, cm, mm, ft, in, ftUS

    For more information, try '--help'.
    "#);
}

#[test]
fn an_unknown_ellipsoid() {
    let Some(source) = open_data("awkward/unknown_ellipsoid_dem.tif") else {
        return;
    };
    let scratch = Scratch::new();
    std::fs::copy(source, scratch.path("dem.tif")).unwrap();
    assert_snapshot!(refused(&scratch, &STATED), @r#"error: dem.tif: no transformation from WGS 84 to "unknown" is known (its datum is not known, PROJ would ignore it); state the right one with --dem-crs"#);
}

#[test]
fn far_from_the_site() {
    let scratch = plain();
    scratch.site_with("-74.0", "-75.0");
    assert_snapshot!(refused(&scratch, &STATED), @"error: dem.tif: does not reach longitude -75, latitude 40, which is x -75.000000, y 40.000000 there; accepted: a terrain model that holds the site (x -74.050000 to -73.950000, y 39.950000 to 40.050000 in NAD83)");
}

#[test]
fn a_virtual_format() {
    let scratch = Scratch::new();
    scratch.write(
        "dem.vrt",
        "<VRTDataset rasterXSize=\"1\" rasterYSize=\"1\"><VRTRasterBand dataType=\"Float32\" band=\"1\"/></VRTDataset>",
    );
    assert_snapshot!(refused(&scratch, &["dem.vrt"]), @"error: dem.vrt: cannot be opened: `dem.vrt' not recognized as being in a supported file format; accepted: a file of one of the formats GeoTIFF, Arc/Info ASCII grid");
}

#[test]
fn a_table() {
    let scratch = Scratch::new();
    scratch.write("dem.csv", "x,y,z\n-74,40,2\n");
    assert_snapshot!(refused(&scratch, &["dem.csv"]), @"error: dem.csv: cannot be opened: `dem.csv' not recognized as being in a supported file format; accepted: a file of one of the formats GeoTIFF, Arc/Info ASCII grid");
}

#[test]
fn a_picture() {
    let scratch = Scratch::new();
    scratch.write(
        "dem.png",
        b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01\x08\0\0\0\0:~\x9bU",
    );
    assert_snapshot!(refused(&scratch, &["dem.png"]), @"error: dem.png: cannot be opened: `dem.png' not recognized as being in a supported file format; accepted: a file of one of the formats GeoTIFF, Arc/Info ASCII grid");
}

#[test]
fn a_virtual_path() {
    assert_snapshot!(refused(&Scratch::new(), &["/vsicurl/http://localhost/dem.tif"]), @r#"error: /vsicurl/http://localhost/dem.tif: virtual and network paths ("/vsi…", "scheme://") are not opened; accepted: a file on this machine"#);
}

#[test]
fn an_address() {
    assert_snapshot!(refused(&Scratch::new(), &["s3://bucket/dem.tif"]), @r#"error: option --dem: address "s3://bucket/dem.tif": it is neither http nor https; accepted: an address such as https://example.org/collections/zones"#);
}

#[test]
fn a_radius_without_a_unit() {
    let scratch = plain();
    let dem = [&STATED[..], &["--grade-radius", "10"]].concat();
    assert_snapshot!(refused(&scratch, &dem), @r#"error: option --grade-radius: length "10": it has no unit; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn a_negative_radius() {
    let scratch = plain();
    let dem = [&STATED[..], &["--grade-radius=-10 m"]].concat();
    assert_snapshot!(refused(&scratch, &dem), @r#"error: option --grade-radius: length "-10 m": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}
