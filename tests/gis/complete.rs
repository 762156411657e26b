//! A file that was cut short is never a smaller layer.

use std::path::Path;

use sillmark::hazard::{Part, ZoneStatement, read_zones};
use sillmark::quantity::{Length, unit::meter};
use sillmark::site::Location;

use crate::support::{copy_with, open_data};

/// A box with many zones, one with few, and everything.
fn parts() -> [Option<Part>; 3] {
    let around = |longitude, latitude, metres| Part::Around {
        location: Location::from_degrees(longitude, latitude).unwrap(),
        margin: Length::new::<meter>(metres),
    };
    [
        None,
        Some(around(-74.0335, 40.74, 2000.0)),
        Some(around(-74.1, 40.66, 50.0)),
    ]
}

fn features(path: &Path, around: Option<Part>) -> Result<Vec<String>, String> {
    let map = read_zones(path, None, &ZoneStatement::default(), around);
    let map = map.map_err(|error| error.to_string())?;
    let mut names: Vec<_> = map.zones().map(|(zone, _)| zone.feature.clone()).collect();
    names.sort();
    Ok(names)
}

/// Cuts `part` of a copy at many lengths; reading must fail or give all there is.
fn cut_everywhere(driver: &str, name: &str, options: &[&str], parts_of_it: &[&str], steps: u64) {
    let Some(source) = open_data("hudson/S_FLD_HAZ_AR.shp") else {
        return;
    };
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join(name);
    copy_with(&source, driver, &path, options);
    let whole = parts().map(|part| features(&path, part).unwrap());
    assert_eq!(whole[0].len(), 405, "the county has 405 zones");
    assert!(whole[1].len() > 10 && !whole[2].is_empty() && whole[2].len() < 20);
    for part in parts_of_it {
        let cut = if path.is_dir() {
            path.join(part)
        } else {
            path.with_extension(part)
        };
        let bytes = std::fs::read(&cut).unwrap();
        let length = u64::try_from(bytes.len()).unwrap();
        let mut harmless = 0;
        let lengths = (0..steps).map(|step| length * step / steps);
        for kept in lengths.chain((1..=10).map(|missing| length.saturating_sub(missing))) {
            std::fs::write(&cut, &bytes[..usize::try_from(kept).unwrap()]).unwrap();
            for (around, whole) in parts().into_iter().zip(&whole) {
                match features(&path, around) {
                    Err(_) => {}
                    Ok(read) if read == *whole => harmless += 1,
                    Ok(read) => panic!(
                        "{part} cut to {kept} of {length}: {} of {} features and no error",
                        read.len(),
                        whole.len()
                    ),
                }
            }
        }
        // White space at the end of a text, the end mark of a table: no cut that matters.
        assert!(
            harmless <= parts().len(),
            "{part}: {harmless} cuts change nothing"
        );
        std::fs::write(&cut, &bytes).unwrap();
    }
}

#[test]
fn a_cut_flatgeobuf_is_an_error() {
    cut_everywhere("FlatGeobuf", "zones.fgb", &[], &["fgb"], 120);
}

#[test]
fn a_cut_flatgeobuf_without_an_index_is_an_error() {
    let options = ["SPATIAL_INDEX=NO"];
    cut_everywhere("FlatGeobuf", "zones.fgb", &options, &["fgb"], 40);
}

#[test]
fn a_cut_shapefile_is_an_error() {
    let parts = ["shp", "shx", "dbf"];
    cut_everywhere("ESRI Shapefile", "zones.shp", &[], &parts, 40);
}

#[test]
fn a_shapefile_with_the_head_of_a_larger_index_is_an_error() {
    // Of an index of more than 2^20 shapes GDAL reads what is there and drops the rest
    // without a word. Here an index says 1 100 000 and holds 405.
    let Some(source) = open_data("hudson/S_FLD_HAZ_AR.shp") else {
        return;
    };
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("zones.shp");
    copy_with(&source, "ESRI Shapefile", &path, &[]);
    let index = path.with_extension("shx");
    let mut bytes = std::fs::read(&index).unwrap();
    bytes[24..28].copy_from_slice(&(50_u32 + 4 * 1_100_000).to_be_bytes());
    std::fs::write(&index, bytes).unwrap();
    for part in parts() {
        let error = features(&path, part).unwrap_err();
        assert!(error.contains("zones.shx: is cut short"), "{error}");
    }
}

#[test]
fn a_shapefile_with_a_longer_table_is_an_error() {
    let Some(source) = open_data("hudson/S_FLD_HAZ_AR.shp") else {
        return;
    };
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("zones.shp");
    copy_with(&source, "ESRI Shapefile", &path, &[]);
    // Shapes and index of a file of 100, table of one of 405.
    let index = path.with_extension("shx");
    let mut bytes = std::fs::read(&index).unwrap();
    bytes.truncate(100 + 8 * 100);
    bytes[24..28].copy_from_slice(&(50_u32 + 4 * 100).to_be_bytes());
    std::fs::write(&index, bytes).unwrap();
    for part in parts() {
        let error = features(&path, part).unwrap_err();
        assert!(
            error.contains("405 rows") && error.contains("100 shapes"),
            "{error}"
        );
    }
}

#[test]
fn a_cut_geopackage_is_an_error() {
    cut_everywhere("GPKG", "zones.gpkg", &[], &["gpkg"], 40);
}

#[test]
fn a_cut_geojson_is_an_error() {
    cut_everywhere("GeoJSON", "zones.geojson", &[], &["geojson"], 20);
}

#[test]
fn a_cut_file_geodatabase_is_an_error() {
    let table = ["a00000009.gdbtable", "a00000009.gdbtablx"];
    cut_everywhere("OpenFileGDB", "zones.gdb", &[], &table, 40);
}
