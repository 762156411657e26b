//! Opening a user's file: read only, by an explicit list of formats.

use std::path::Path;

use gdal::{Dataset, DatasetOptions, GdalOpenFlags};

use super::{GisError, heard, start};

/// Raster formats that are opened, by GDAL's names.
pub const RASTER_FORMATS: [&str; 2] = ["GTiff", "AAIGrid"];

/// Vector formats that are opened, by GDAL's names.
pub const VECTOR_FORMATS: [&str; 5] = [
    "ESRI Shapefile",
    "GPKG",
    "GeoJSON",
    "FlatGeobuf",
    "OpenFileGDB",
];

/// Opens a raster for reading: GeoTIFF or Arc/Info ASCII grid.
///
/// # Errors
/// [`GisError`] with the path: missing, a virtual path, another format, a compression that
/// is not built in.
///
/// ```
/// use std::path::Path;
/// let error = sillmark::gis::open_raster(Path::new("no/such/dem.tif")).unwrap_err();
/// assert!(error.to_string().starts_with("no/such/dem.tif: cannot be read"));
/// ```
pub fn open_raster(path: &Path) -> Result<Dataset, GisError> {
    open(path, GdalOpenFlags::GDAL_OF_RASTER, &RASTER_FORMATS)
}

/// Opens a vector file for reading: shapefile, GeoPackage, GeoJSON, FlatGeobuf or a file
/// geodatabase (`.gdb` folder).
///
/// # Errors
/// [`GisError`] with the path, as [`open_raster`].
pub fn open_vector(path: &Path) -> Result<Dataset, GisError> {
    open(path, GdalOpenFlags::GDAL_OF_VECTOR, &VECTOR_FORMATS)
}

/// Opens a vector file of one of these formats only.
pub(super) fn open_vector_as(path: &Path, format: &str) -> Result<Dataset, GisError> {
    open(path, GdalOpenFlags::GDAL_OF_VECTOR, &[format])
}

fn open(path: &Path, kind: GdalOpenFlags, formats: &[&str]) -> Result<Dataset, GisError> {
    start();
    let text = path.to_string_lossy();
    if text.starts_with("/vsi") || text.contains("://") {
        // Behind a question mark stand keys, which no message repeats.
        let shown = text.split('?').next().unwrap_or_default();
        return Err(GisError::VirtualPath { path: shown.into() });
    }
    // GDAL takes much that is not a path (connection strings, inline JSON), and says
    // nothing about a path that is not there.
    std::fs::metadata(path).map_err(|error| GisError::Missing {
        path: path.to_owned(),
        reason: error.to_string(),
        accepted: in_words(formats),
    })?;
    let options = DatasetOptions {
        open_flags: kind | GdalOpenFlags::GDAL_OF_READONLY | GdalOpenFlags::GDAL_OF_VERBOSE_ERROR,
        allowed_drivers: Some(formats),
        ..DatasetOptions::default()
    };
    #[allow(clippy::disallowed_methods)] // this is the one place that knows the formats
    let (opened, heard) = heard(|| Dataset::open_ex(path, options));
    opened.map_err(|error| {
        let path = path.to_owned();
        let detail = if heard.is_empty() {
            error.to_string()
        } else {
            heard
        };
        if detail.contains("missing codec") || detail.contains("compression") {
            GisError::Compression { path, detail }
        } else {
            GisError::Format {
                path,
                accepted: in_words(formats),
                detail,
            }
        }
    })
}

/// What is accepted, with the formats by the names that people know them by.
fn in_words(formats: &[&str]) -> String {
    let words: Vec<&str> = formats
        .iter()
        .map(|format| match *format {
            "GTiff" => "GeoTIFF",
            "AAIGrid" => "Arc/Info ASCII grid",
            "ESRI Shapefile" => "shapefile",
            "GPKG" => "GeoPackage",
            "OpenFileGDB" => "file geodatabase",
            other => other,
        })
        .collect();
    format!("a file of one of the formats {}", words.join(", "))
}
