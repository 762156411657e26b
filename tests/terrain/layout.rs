//! Rasters of one content in many layouts.

use std::path::{Path, PathBuf};

use gdal::raster::{Buffer, GdalType, RasterCreationOptions};
use gdal::spatial_ref::SpatialRef;
use gdal::{Dataset, DriverManager};

/// How a GeoTIFF stores its cells; 9999 stands for no value.
pub(crate) struct Layout<'a> {
    /// The type of its band, by GDAL's name.
    pub(crate) kind: &'a str,
    /// Creation options.
    pub(crate) options: &'a [&'a str],
    pub(crate) columns: usize,
    pub(crate) rows: usize,
    pub(crate) transform: [f64; 6],
    pub(crate) crs: &'a str,
    pub(crate) scale: f64,
    pub(crate) offset: f64,
}

impl Layout<'_> {
    pub(crate) fn write(&self, folder: &Path, stored: &[f64]) -> PathBuf {
        sillmark::gis::start();
        let path = folder.join("dem.tif");
        let dataset = match self.kind {
            "Float32" => self.create::<f32>(&path),
            "Float64" => self.create::<f64>(&path),
            "UInt16" => self.create::<u16>(&path),
            "Int16" => self.create::<i16>(&path),
            other => panic!("no layout of {other}"),
        };
        let mut band = dataset.rasterband(1).unwrap();
        band.set_no_data_value(Some(9999.0)).unwrap();
        if self.scale.to_bits() != 1.0_f64.to_bits() {
            band.set_scale(self.scale).unwrap();
            band.set_offset(self.offset).unwrap();
        }
        let size = (self.columns, self.rows);
        let mut buffer = Buffer::new(size, stored.to_vec());
        band.write((0, 0), size, &mut buffer).unwrap();
        dataset.close().unwrap();
        path
    }

    fn create<T: GdalType>(&self, path: &Path) -> Dataset {
        let options: RasterCreationOptions = self.options.iter().copied().collect();
        let mut dataset = DriverManager::get_driver_by_name("GTiff")
            .unwrap()
            .create_with_band_type_with_options::<T, _>(path, self.columns, self.rows, 1, &options)
            .unwrap();
        dataset.set_geo_transform(&self.transform).unwrap();
        let crs = SpatialRef::from_definition(self.crs).unwrap();
        dataset.set_spatial_ref(&crs).unwrap();
        dataset
    }
}

/// Numbers without order, the same in every run (Knuth's linear congruence).
pub(crate) struct Random(u64);

impl Random {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// From 0 to 1.
    pub(crate) fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub(crate) fn below(&mut self, count: usize) -> usize {
        (self.next() * count as f64) as usize
    }
}
