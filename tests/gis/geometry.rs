//! Geometries of every make as flat areas and lines.

#![allow(clippy::redundant_closure_for_method_calls)] // the method is not general enough

use std::path::Path;

use gdal::DriverManager;
use gdal::spatial_ref::SpatialRef;
use gdal::vector::{Geometry, LayerAccess, LayerOptions};
use geo::{Area, Length, MultiLineString, MultiPolygon};
use sillmark::gis::{FeatureReader, GeometryProblem, GisError, open_vector};

/// Writes one geometry of any kind into a `GeoPackage`.
fn written(folder: &Path, well_known_text: &str) -> std::path::PathBuf {
    sillmark::gis::start();
    let path = folder.join("one.gpkg");
    let driver = DriverManager::get_driver_by_name("GPKG").unwrap();
    let mut dataset = driver.create_vector_only(&path).unwrap();
    let mut layer = dataset
        .create_layer(LayerOptions {
            name: "one",
            srs: Some(&SpatialRef::from_epsg(2263).unwrap()),
            ..LayerOptions::default()
        })
        .unwrap();
    layer
        .create_feature(Geometry::from_wkt(well_known_text).unwrap())
        .unwrap();
    dataset.close().unwrap();
    path
}

fn read<T>(
    well_known_text: &str,
    get: impl Fn(&sillmark::gis::Record<'_>) -> Result<Option<T>, GeometryProblem>,
) -> Result<Option<T>, GeometryProblem> {
    let scratch = tempfile::tempdir().unwrap();
    let path = written(scratch.path(), well_known_text);
    let dataset = open_vector(&path).unwrap();
    let reader = FeatureReader::new(&dataset, &path, "one").unwrap();
    let mut found = None;
    let count = reader
        .read(|record| {
            found = Some(get(record));
            Ok::<(), GisError>(())
        })
        .unwrap();
    assert_eq!(count, 1);
    found.unwrap()
}

fn polygons(text: &str) -> Result<Option<MultiPolygon<f64>>, GeometryProblem> {
    read(text, |record| record.polygons())
}

fn lines(text: &str) -> Result<Option<MultiLineString<f64>>, GeometryProblem> {
    read(text, |record| record.lines())
}

#[test]
fn heights_and_measures_are_dropped() {
    for text in [
        "POLYGON ((0 0,4 0,4 3,0 3,0 0),(1 1,1 2,2 2,2 1,1 1))",
        "POLYGON Z ((0 0 9,4 0 9,4 3 9,0 3 9,0 0 9),(1 1 9,1 2 9,2 2 9,2 1 9,1 1 9))",
        "POLYGON ZM ((0 0 9 1,4 0 9 1,4 3 9 1,0 3 9 1,0 0 9 1),(1 1 9 1,1 2 9 1,2 2 9 1,2 1 9 1,1 1 9 1))",
        "MULTIPOLYGON M (((0 0 7,4 0 7,4 3 7,0 3 7,0 0 7),(1 1 7,1 2 7,2 2 7,2 1 7,1 1 7)))",
    ] {
        let area = polygons(text).unwrap().unwrap().unsigned_area();
        assert!((area - 11.0).abs() < 1e-12, "{text}: {area}");
    }
}

#[test]
fn arcs_become_chords() {
    // A circle of radius 2 by two half circles. Chords of at most 4 degrees lose
    // 1 - sin(4°)/4° of its area, 0.08 %.
    let circle = "CURVEPOLYGON (CIRCULARSTRING (2 0,0 2,-2 0,0 -2,2 0))";
    let multi = "MULTISURFACE (CURVEPOLYGON (CIRCULARSTRING (2 0,0 2,-2 0,0 -2,2 0)))";
    let exact = 4.0 * std::f64::consts::PI;
    for text in [circle, multi] {
        let area = polygons(text).unwrap().unwrap().unsigned_area();
        assert!(area < exact && area > 0.999 * exact, "{text}: {area}");
    }
    let length = lines("COMPOUNDCURVE (CIRCULARSTRING (2 0,0 2,-2 0),(-2 0,-5 0))");
    let length = geo::Euclidean.length(&length.unwrap().unwrap());
    let exact = 3.0 + 2.0 * std::f64::consts::PI;
    assert!(length < exact && length > 0.999 * exact, "{length}");
}

#[test]
fn the_empty_is_nothing() {
    for text in [
        "POLYGON EMPTY",
        "MULTIPOLYGON EMPTY",
        "CURVEPOLYGON EMPTY",
        "GEOMETRYCOLLECTION EMPTY",
    ] {
        assert_eq!(polygons(text), Ok(None), "{text}");
    }
    let partly = polygons("MULTIPOLYGON (EMPTY,((0 0,1 0,1 1,0 0)))")
        .unwrap()
        .unwrap();
    assert_eq!(partly.0.len(), 1);
    assert_eq!(lines("LINESTRING EMPTY"), Ok(None));
}

#[test]
fn another_kind_is_named() {
    let error = polygons("LINESTRING (0 0,1 1)").unwrap_err();
    assert_eq!(
        error.to_string(),
        "its geometry is a LINESTRING; accepted: POLYGON, MULTIPOLYGON"
    );
    assert!(polygons("POINT (1 2)").is_err());
    assert!(polygons("GEOMETRYCOLLECTION (POINT (1 2))").is_err());
    assert!(lines("POLYGON ((0 0,1 0,1 1,0 0))").is_err());
}
