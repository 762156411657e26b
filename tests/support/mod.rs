//! What the tests share: real data, files written on the fly, a web server.

#[allow(dead_code)] // each of the binaries uses a part
pub(crate) mod web;

use std::io::Write;
use std::path::{Path, PathBuf};

use gdal::vector::{Feature, FieldDefn, Geometry, LayerAccess, LayerOptions};
use gdal::{Dataset, DriverManager};
use gdal_sys::OGRwkbGeometryType;

/// Says on the terminal that something was skipped, past the capture of the test runner.
/// Where `CI` is set nothing may be skipped.
pub(crate) fn skip(why: &str) {
    assert!(std::env::var_os("CI").is_none(), "skipped in CI: {why}");
    let _ = std::io::stderr().write_all(format!("skipped: {why}\n").as_bytes());
}

/// A file of the open data beside the project, or in `SILLMARK_OPEN_DATA`.
pub(crate) fn open_data(relative: &str) -> Option<PathBuf> {
    let folder = std::env::var_os("SILLMARK_OPEN_DATA").map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data"),
        PathBuf::from,
    );
    let path = folder.join(relative);
    if path.exists() {
        Some(path)
    } else {
        let name = std::thread::current().name().unwrap_or("?").to_owned();
        skip(&format!("{name}: open data is not there: {relative}"));
        None
    }
}

/// Writes a text file into a folder.
pub(crate) fn write(folder: &Path, name: &str, text: &str) -> PathBuf {
    let path = folder.join(name);
    std::fs::write(&path, text).expect("the scratch folder is writable");
    path
}

/// Copies the first layer of a vector file into another format, under the name `zones`.
pub(crate) fn copy_as(source: &Path, driver: &str, target: &Path) {
    copy_with(source, driver, target, &[]);
}

/// As [`copy_as`], with options for the new layer.
pub(crate) fn copy_with(source: &Path, driver: &str, target: &Path, options: &[&str]) {
    sillmark::gis::start();
    let source = Dataset::open(source).expect("the source opens");
    let mut layer = source.layer(0).expect("the source has a layer");
    let driver = DriverManager::get_driver_by_name(driver).expect("the driver is built in");
    let mut copy = driver
        .create_vector_only(target)
        .expect("the copy is created");
    let reference = layer.spatial_ref();
    let copied = copy
        .create_layer(LayerOptions {
            name: "zones",
            srs: reference.as_ref(),
            ty: OGRwkbGeometryType::wkbMultiPolygon,
            options: Some(options),
        })
        .expect("the layer is created");
    let fields: Vec<_> = layer
        .defn()
        .fields()
        .map(|field| (field.name(), field.field_type(), field.width()))
        .collect();
    for (name, kind, width) in &fields {
        let definition = FieldDefn::new(name, *kind).expect("a field");
        definition.set_width(*width);
        definition
            .add_to_layer(&copied)
            .expect("the field is added");
    }
    for feature in layer.features() {
        let mut geometry = feature.geometry().expect("a geometry").clone();
        if geometry.geometry_name() == "POLYGON" {
            let mut collected =
                Geometry::empty(OGRwkbGeometryType::wkbMultiPolygon).expect("a multipolygon");
            collected.add_geometry(geometry).expect("its part");
            geometry = collected;
        }
        let mut new = Feature::new(copied.defn()).expect("a feature");
        for index in 0..fields.len() {
            if let Some(value) = feature.field(index).expect("a known type") {
                new.set_field(index, &value).expect("the same type");
            }
        }
        new.set_geometry(geometry).expect("the geometry is set");
        new.create(&copied).expect("the feature is written");
    }
    copy.close().expect("the copy is closed");
}
