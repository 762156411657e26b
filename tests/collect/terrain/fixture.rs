//! Rasters to be served, and what is collected of them.

use std::path::{Path, PathBuf};
use std::time::Duration;

use gdal::raster::{Buffer, GdalType, RasterCreationOptions};
use gdal::spatial_ref::SpatialRef;
use gdal::{Dataset, DriverManager, Metadata as _};
use sillmark::collect::{CollectTerrainError, CollectedTerrain, terrain};
use sillmark::quantity::{Length, LengthUnit, VerticalDatum, unit::meter};
use sillmark::service::{Answers, Cache, Connection, Limits};
use sillmark::site::Location;
use sillmark::terrain::DemStatement;

use super::server::{Manner, Server};

/// Columns and rows of the raster: no multiples of any block.
pub(super) const SIZE: (usize, usize) = (700, 530);

/// UTM zone 18 north, cells of ten metres.
pub(super) const NORTH_UP: [f64; 6] = [580_000.0, 10.0, 0.0, 4_510_000.0, 0.0, -10.0];

/// A different height in each cell, as far as the type goes.
pub(super) fn height(column: usize, row: usize) -> f64 {
    10.0 + (column + SIZE.0 * row) as f64 * 1e-4
}

/// A raster as GDAL writes it by some of its creation options; cells by their column and row.
pub(super) fn write<T: GdalType + Copy>(
    path: &Path,
    options: &[&str],
    transform: [f64; 6],
    no_data: Option<f64>,
    cell: impl Fn(usize, usize) -> T,
) -> Dataset {
    sillmark::gis::start();
    let options = options.iter().copied().collect::<RasterCreationOptions>();
    let (columns, rows) = SIZE;
    let mut dataset = DriverManager::get_driver_by_name("GTiff")
        .unwrap()
        .create_with_band_type_with_options::<T, _>(path, columns, rows, 1, &options)
        .unwrap();
    dataset.set_geo_transform(&transform).unwrap();
    let crs = SpatialRef::from_definition("EPSG:26918").unwrap();
    dataset.set_spatial_ref(&crs).unwrap();
    dataset
        .set_metadata_item("SOURCE", "invented & <made up>", "")
        .unwrap();
    let mut band = dataset.rasterband(1).unwrap();
    band.set_no_data_value(no_data).unwrap();
    let cells = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
    let cells = cells.map(|(column, row)| cell(column, row)).collect();
    let mut buffer = Buffer::new(SIZE, cells);
    band.write((0, 0), SIZE, &mut buffer).unwrap();
    dataset
}

/// A usual terrain model: tiles, deflated.
pub(super) fn usual(folder: &Path) -> PathBuf {
    let path = folder.join("usual.tif");
    let options = [
        "TILED=YES",
        "BLOCKXSIZE=64",
        "BLOCKYSIZE=64",
        "COMPRESS=DEFLATE",
    ];
    let dataset = write(&path, &options, NORTH_UP, Some(-9999.0), |column, row| {
        height(column, row) as f32
    });
    dataset.close().unwrap();
    path
}

pub(super) fn metres_navd88() -> DemStatement {
    DemStatement {
        unit: Some(LengthUnit::Metre),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    }
}

/// Limits that end a test in time.
pub(super) fn limits() -> Limits {
    Limits {
        answer: Duration::from_secs(10),
        retries: 1,
        pause: Duration::from_millis(5),
        ..Limits::default()
    }
}

pub(super) fn metres(metres: f64) -> Length {
    Length::new::<meter>(metres)
}

/// What is collected from a server, each time into a folder of its own.
pub(super) fn collect_kept(
    server: &Server,
    answers: Answers,
    places: &[Location],
    margin: f64,
    folder: &Path,
) -> Result<CollectedTerrain, CollectTerrainError> {
    let address = server.address();
    let connection = Connection::open(&address, answers, limits())?;
    let statement = metres_navd88();
    terrain(
        &connection,
        &address,
        &statement,
        &about(places, metres(margin)),
        folder,
    )
}

pub(super) fn collect(
    server: &Server,
    places: &[Location],
    margin: f64,
    folder: &Path,
) -> Result<CollectedTerrain, CollectTerrainError> {
    collect_kept(server, Answers::Fetched, places, margin, folder)
}

pub(super) fn cache(folder: &Path) -> Cache {
    Cache::open(&folder.join("answers")).unwrap()
}

/// A file is served well.
pub(super) fn served(path: &Path) -> Server {
    Server::start(std::fs::read(path).unwrap(), Manner::Well)
}

/// All cells of a raster by GDAL, and its size and transform.
pub(super) fn cells(path: &Path) -> ((usize, usize), [f64; 6], Vec<f64>) {
    let dataset = sillmark::gis::open_raster(path).unwrap();
    let size = dataset.raster_size();
    let band = dataset.rasterband(1).unwrap();
    let buffer = band.read_as::<f64>((0, 0), size, size, None).unwrap();
    let transform = dataset.geo_transform().unwrap();
    (size, transform, buffer.into_shape_and_vec().1)
}

/// Checks that a crop is a window of the whole, cell by cell; gives its first column and row.
pub(super) fn assert_window(whole: &Path, crop: &Path) -> (usize, usize) {
    let ((columns, rows), whole_at, all) = cells(whole);
    let ((width, height), crop_at, part) = cells(crop);
    let [x, column_x, row_x, y, column_y, row_y] = whole_at;
    assert_eq!(
        [crop_at[1], crop_at[2], crop_at[4], crop_at[5]],
        [column_x, row_x, column_y, row_y]
    );
    let area = column_x * row_y - row_x * column_y;
    let (right, down) = (crop_at[0] - x, crop_at[3] - y);
    let column = (right * row_y - row_x * down) / area;
    let row = (column_x * down - column_y * right) / area;
    assert!((column - column.round()).abs() < 1e-6 && (row - row.round()).abs() < 1e-6);
    let (column, row) = (column.round() as usize, row.round() as usize);
    assert!(column + width <= columns && row + height <= rows);
    for line in 0..height {
        let start = (row + line) * columns + column;
        let (expected, found) = (&all[start..start + width], &part[line * width..][..width]);
        let same = expected
            .iter()
            .zip(found)
            .all(|(one, other)| one.to_bits() == other.to_bits());
        assert!(same, "row {line} of {}", crop.display());
    }
    (column, row)
}

/// Places that all have the same margin, whatever the size of a cell.
pub(super) fn about(
    places: &[Location],
    margin: Length,
) -> impl Fn(Length) -> Vec<(Location, Length)> + '_ {
    move |_| places.iter().map(|place| (*place, margin)).collect()
}
