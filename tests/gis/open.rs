//! Which files are opened, and what is said about the others.

use std::path::Path;

use gdal::DriverManager;
use gdal::raster::{ColorInterpretation, RasterCreationOptions};
use sillmark::gis::{GisError, open_raster, open_vector};

use crate::support::{open_data, write};

#[test]
fn a_missing_file_is_named() {
    for error in [
        open_raster(Path::new("no/dem.tif")).unwrap_err(),
        open_vector(Path::new("no/dem.tif")).unwrap_err(),
    ] {
        assert!(matches!(error, GisError::Missing { .. }), "{error}");
        assert!(error.to_string().starts_with("no/dem.tif: "), "{error}");
    }
}

#[test]
fn virtual_and_network_paths_are_refused() {
    for path in [
        "/vsicurl/https://example.org/dem.tif",
        "/vsizip/zones.zip/zones.shp",
        "/vsimem/dem.tif",
        "https://example.org/dem.tif",
        "s3://bucket/dem.tif",
    ] {
        let error = open_raster(Path::new(path)).unwrap_err();
        assert!(matches!(error, GisError::VirtualPath { .. }), "{error}");
        let error = open_vector(Path::new(path)).unwrap_err();
        assert!(matches!(error, GisError::VirtualPath { .. }), "{error}");
    }
}

#[test]
fn a_virtual_raster_is_refused_under_any_name() {
    let scratch = tempfile::tempdir().unwrap();
    let text = r#"<VRTDataset rasterXSize="2" rasterYSize="2"><VRTRasterBand dataType="Byte" band="1"/></VRTDataset>"#;
    for name in ["dem.vrt", "dem.tif"] {
        let error = open_raster(&write(scratch.path(), name, text)).unwrap_err();
        let text = error.to_string();
        assert!(matches!(error, GisError::Format { .. }), "{text}");
        assert!(
            text.contains(name) && text.contains("GeoTIFF, Arc/Info ASCII grid"),
            "{text}"
        );
    }
}

#[test]
fn another_format_hears_which_are_accepted() {
    let scratch = tempfile::tempdir().unwrap();
    let text = write(scratch.path(), "zones.kml", "<kml></kml>");
    let error = open_vector(&text).unwrap_err().to_string();
    for format in [
        "shapefile",
        "GeoPackage",
        "GeoJSON",
        "FlatGeobuf",
        "file geodatabase",
    ] {
        assert!(error.contains(format), "{error}");
    }
    // A USGS DEM, which GDAL can read in other builds.
    if let Some(foreign) = open_data("awkward/truncated.dem") {
        let error = open_raster(&foreign).unwrap_err();
        assert!(matches!(error, GisError::Format { .. }), "{error}");
    }
}

#[test]
fn inline_text_is_not_a_file() {
    let json = r#"{"type":"FeatureCollection","features":[]}"#;
    let error = open_vector(Path::new(json)).unwrap_err();
    assert!(matches!(error, GisError::Missing { .. }), "{error}");
}

#[test]
fn an_unknown_compression_hears_how_to_rewrite_it() {
    sillmark::gis::start();
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("dem.tif");
    let options = RasterCreationOptions::from_iter(["COMPRESS=DEFLATE"]);
    let mut dataset = DriverManager::get_driver_by_name("GTiff")
        .unwrap()
        .create_with_band_type_with_options::<f32, _>(&path, 8, 8, 1, &options)
        .unwrap();
    dataset
        .set_geo_transform(&[0.0, 1.0, 0.0, 0.0, 0.0, -1.0])
        .unwrap();
    let mut band = dataset.rasterband(1).unwrap();
    band.set_color_interpretation(ColorInterpretation::GrayIndex)
        .unwrap();
    band.fill(1.0, None).unwrap();
    dataset.close().unwrap();
    // The same file under the number of ZSTD: tag 259 (compression) from 8 to 50000.
    let mut bytes = std::fs::read(&path).unwrap();
    let tag = [0x03, 0x01, 0x03, 0x00, 0x01, 0x00, 0x00, 0x00, 0x08, 0x00];
    let at = bytes
        .windows(tag.len())
        .position(|window| window == tag)
        .unwrap();
    bytes[at + 8..at + 10].copy_from_slice(&50000_u16.to_le_bytes());
    std::fs::write(&path, bytes).unwrap();
    let error = open_raster(&path).unwrap_err();
    let text = error.to_string();
    assert!(matches!(error, GisError::Compression { .. }), "{text}");
    assert!(
        text.contains("gdal_translate -co COMPRESS=DEFLATE"),
        "{text}"
    );
}
