//! Choosing the layer, its coordinates, its attributes.

use std::path::Path;

use gdal::DriverManager;
use gdal::spatial_ref::SpatialRef;
use gdal::vector::{FieldDefn, FieldValue, Geometry, LayerAccess, LayerOptions};
use gdal_sys::OGRFieldType;
use sillmark::hazard::{HazardError, ZoneStatement, read_zones};

use super::fixture::{codes, layer, map, place, zone};
use crate::support::open_data;

/// A `GeoPackage` of layers, each with one attribute of the given name.
fn package(path: &Path, layers: &[(&str, &str)]) {
    sillmark::gis::start();
    let driver = DriverManager::get_driver_by_name("GPKG").unwrap();
    let mut dataset = driver.create_vector_only(path).unwrap();
    for (name, attribute) in layers {
        let layer = dataset
            .create_layer(LayerOptions {
                name,
                srs: Some(&SpatialRef::from_epsg(4269).unwrap()),
                ..LayerOptions::default()
            })
            .unwrap();
        let field = FieldDefn::new(attribute, OGRFieldType::OFTString).unwrap();
        field.add_to_layer(&layer).unwrap();
        let square = "POLYGON ((-74 40,-73.9 40,-73.9 40.1,-74 40.1,-74 40))";
        let values = [FieldValue::StringValue("AE".into())];
        let square = Geometry::from_wkt(square).unwrap();
        let mut feature = gdal::vector::Feature::new(layer.defn()).unwrap();
        feature.set_geometry(square).unwrap();
        feature.set_field(0, &values[0]).unwrap();
        feature.create(&layer).unwrap();
    }
    dataset.close().unwrap();
}

fn read(path: &Path, layer: Option<&str>) -> Result<String, HazardError> {
    let map = read_zones(path, layer, &ZoneStatement::default(), None)?;
    let name = map.zones().next().map(|(zone, _)| zone.layer.clone());
    Ok(name.unwrap_or_default())
}

#[test]
fn the_layer_with_the_zone_is_found() {
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("county.gpkg");
    package(
        &path,
        &[
            ("S_BFE", "ELEV"),
            ("S_FLD_HAZ_AR", "fld_zone"),
            ("S_XS", "WSEL_REG"),
        ],
    );
    assert_eq!(read(&path, None).unwrap(), "S_FLD_HAZ_AR");
    let error = read(&path, Some("S_BFE")).unwrap_err().to_string();
    assert!(
        error.contains("\"FLD_ZONE\"") && error.contains("it has: ELEV"),
        "{error}"
    );
    let error = read(&path, Some("ZONES")).unwrap_err().to_string();
    assert!(
        error.contains("\"ZONES\"") && error.contains("S_BFE, S_FLD_HAZ_AR, S_XS"),
        "{error}"
    );
}

#[test]
fn two_layers_that_fit_are_not_chosen_between() {
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("county.gpkg");
    package(&path, &[("now", "FLD_ZONE"), ("before", "FLD_ZONE")]);
    let error = read(&path, None).unwrap_err();
    assert!(matches!(error, HazardError::WhichLayer { .. }), "{error}");
    assert!(error.to_string().contains("now, before"), "{error}");
    assert_eq!(read(&path, Some("before")).unwrap(), "before");
}

#[test]
fn plane_feet_that_claim_to_be_degrees_are_refused() {
    let Some(path) = open_data("awkward/plane_feet_without_crs.geojson") else {
        return;
    };
    // It holds cross-sections; only its coordinates matter, so the schema asks for one of
    // their attributes.
    let schema = include_str!("../../data/schemas/nfhl.toml").replace("FLD_ZONE", "River");
    let schema = sillmark::hazard::Schema::from_toml("test", &schema).unwrap();
    let read = |statement: &ZoneStatement| {
        sillmark::hazard::read_zones_by(&schema, &path, None, statement, None).map(|_| ())
    };
    let error = read(&ZoneStatement::default()).unwrap_err();
    assert!(matches!(error, HazardError::NotDegrees { .. }), "{error}");
    let text = error.to_string();
    for part in [
        "plane_feet_without_crs.geojson",
        "6387431",
        "-360 to 360",
        "--zones-crs",
    ] {
        assert!(text.contains(part), "{text}");
    }
    // With its system stated the coordinates are fine, and its lines are not zones.
    let stated = ZoneStatement {
        crs: Some("EPSG:2226".into()),
        ..ZoneStatement::default()
    };
    let error = read(&stated).unwrap_err().to_string();
    assert!(error.contains("LINESTRING"), "{error}");
}

#[test]
fn a_latitude_beyond_the_pole_is_refused() {
    let error = map(&[zone("AE", 0.0, 51.0, 0.1)])
        .map(|_| ())
        .unwrap_err()
        .to_string();
    assert!(
        error.contains("latitude 91.1") || error.contains("latitude 91"),
        "{error}"
    );
}

#[test]
fn a_shapefile_without_a_system_wants_it_stated() {
    let scratch = tempfile::tempdir().unwrap();
    let source = layer(scratch.path(), &[zone("AE", 0.0, 0.0, 0.1)]);
    let path = scratch.path().join("zones.shp");
    crate::support::copy_as(&source, "ESRI Shapefile", &path);
    std::fs::remove_file(path.with_extension("prj")).unwrap();
    let error = read(&path, None).unwrap_err();
    assert!(matches!(error, HazardError::NoCrs { .. }), "{error}");
    assert!(error.to_string().contains("--zones-crs"), "{error}");
    let stated = ZoneStatement {
        crs: Some("EPSG:4269".into()),
        ..ZoneStatement::default()
    };
    let map = read_zones(&path, None, &stated, None).unwrap();
    assert_eq!(codes(&map, place(0.05, 0.05)), ["AE"]);
}

#[test]
fn a_stated_system_has_to_be_the_files_own() {
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("county.gpkg");
    package(&path, &[("zones", "FLD_ZONE")]);
    let stated = ZoneStatement {
        crs: Some("EPSG:2263".into()),
        ..ZoneStatement::default()
    };
    let error = read_zones(&path, None, &stated, None)
        .map(|_| ())
        .unwrap_err()
        .to_string();
    assert!(
        error.contains("NAD83") && error.contains("Long Island"),
        "{error}"
    );
}

#[test]
fn a_stale_index_beside_a_shapefile_hides_nothing() {
    let scratch = tempfile::tempdir().unwrap();
    let write = |count: u8, name: &str| {
        let features: Vec<_> = (0..count)
            .map(|column| zone("AE", 0.01 * f64::from(column), 0.0, 0.01))
            .collect();
        let path = scratch.path().join(name);
        crate::support::copy_as(&layer(scratch.path(), &features), "ESRI Shapefile", &path);
        path
    };
    let old = write(2, "old.shp");
    {
        let options = gdal::DatasetOptions {
            open_flags: gdal::GdalOpenFlags::GDAL_OF_UPDATE | gdal::GdalOpenFlags::GDAL_OF_VECTOR,
            ..gdal::DatasetOptions::default()
        };
        let dataset = gdal::Dataset::open_ex(&old, options).unwrap();
        let statement = "CREATE SPATIAL INDEX ON old";
        let none = dataset.execute_sql(statement, None, gdal::vector::sql::Dialect::DEFAULT);
        assert!(none.unwrap().is_none());
        dataset.close().unwrap();
    }
    let new = write(9, "new.shp");
    std::fs::rename(old.with_extension("qix"), new.with_extension("qix")).unwrap();
    let around = sillmark::hazard::Part::Around {
        location: place(0.075, 0.005),
        margin: sillmark::quantity::Length::new::<sillmark::quantity::unit::meter>(10.0),
    };
    let map = read_zones(&new, None, &ZoneStatement::default(), Some(around)).unwrap();
    assert_eq!(codes(&map, place(0.075, 0.005)), ["AE"]);
}
