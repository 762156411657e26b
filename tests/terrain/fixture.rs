//! Rasters written for the tests.

use std::path::{Path, PathBuf};

use gdal::DriverManager;
use gdal::raster::{Buffer, GdalType};
use gdal::spatial_ref::SpatialRef;
use sillmark::crs::{CrsDefinition, Projector};
use sillmark::quantity::{LengthUnit, VerticalDatum, unit::meter};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, Gap, Terrain};

/// A raster to be written: UTM zone 18 north, its first corner at 580 000 E, 4 510 000 N.
pub(crate) struct Raster<'a, T> {
    pub(crate) columns: usize,
    pub(crate) cells: &'a [T],
    pub(crate) no_data: Option<f64>,
    pub(crate) transform: [f64; 6],
    pub(crate) crs: &'a str,
}

/// North up, cells of ten metres.
pub(crate) const NORTH_UP: [f64; 6] = [580_000.0, 10.0, 0.0, 4_510_000.0, 0.0, -10.0];

pub(crate) fn raster<T>(columns: usize, cells: &[T]) -> Raster<'_, T> {
    Raster {
        columns,
        cells,
        no_data: None,
        transform: NORTH_UP,
        crs: "EPSG:26918",
    }
}

impl<T: GdalType + Copy> Raster<'_, T> {
    pub(crate) fn write(&self, folder: &Path, name: &str) -> PathBuf {
        sillmark::gis::start();
        let path = folder.join(name);
        let rows = self.cells.len() / self.columns;
        let mut dataset = DriverManager::get_driver_by_name("GTiff")
            .unwrap()
            .create_with_band_type::<T, _>(&path, self.columns, rows, 1)
            .unwrap();
        dataset.set_geo_transform(&self.transform).unwrap();
        if !self.crs.is_empty() {
            dataset
                .set_spatial_ref(&SpatialRef::from_definition(self.crs).unwrap())
                .unwrap();
        }
        let size = (self.columns, rows);
        let mut band = dataset.rasterband(1).unwrap();
        band.set_no_data_value(self.no_data).unwrap();
        let mut buffer = Buffer::new(size, self.cells.to_vec());
        band.write((0, 0), size, &mut buffer).unwrap();
        dataset.close().unwrap();
        path
    }
}

pub(crate) fn metres_navd88() -> DemStatement {
    DemStatement {
        unit: Some(LengthUnit::Metre),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    }
}

/// The place at so many metres east of and north of the first corner of [`NORTH_UP`].
///
/// By bisection over the library's own projector, so that tests can speak in metres.
pub(crate) fn place(east: f64, north: f64) -> Location {
    let crs = CrsDefinition::from_text("EPSG:26918").unwrap().horizontal;
    let projector = Projector::new(crs).unwrap();
    let (x, y) = (580_000.0 + east, 4_510_000.0 + north);
    let (mut longitude, mut latitude) = (-74.05, 40.74);
    for _ in 0..20 {
        let here = Location::from_degrees(longitude, latitude).unwrap();
        let found = projector.project(here).unwrap();
        longitude += (x - found.x) / 84_000.0;
        latitude += (y - found.y) / 111_000.0;
    }
    Location::from_degrees(longitude, latitude).unwrap()
}

/// Height of the ground in metres, or why there is none.
pub(crate) fn metres(dem: &Dem, location: Location) -> Result<f64, Gap> {
    dem.ground_at(location)
        .unwrap()
        .map(|ground| ground.elevation.height().get::<meter>())
}

pub(crate) fn terrain(dems: Vec<Dem>) -> Terrain {
    Terrain::new(dems)
}
