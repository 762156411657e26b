//! Whatever the layout, what is read past GDAL is what GDAL reads.

use gdal::DriverManager;
use gdal::raster::{Buffer, GdalType, RasterCreationOptions};

use super::*;
use crate::terrain::tiling::Tiling;
use crate::terrain::values::Precision;
use crate::terrain::window;

const SIZE: (usize, usize) = (230, 190);

fn create<T: GdalType>(path: &Path, options: &[&str]) -> Dataset {
    let options: RasterCreationOptions = options.iter().copied().collect();
    crate::gis::start();
    DriverManager::get_driver_by_name("GTiff")
        .unwrap()
        .create_with_band_type_with_options::<T, _>(path, SIZE.0, SIZE.1, 1, &options)
        .unwrap()
}

/// A file of numbers with both signs, as far as its type has them.
fn write<T: GdalType>(path: &Path, options: &[&str]) {
    let dataset = create::<T>(path, options);
    let mut cells = vec![0.0; SIZE.0 * SIZE.1];
    for (cell, number) in cells.iter_mut().zip(0_u64..) {
        *cell = f64::from(u16::try_from(number * number % 7919).unwrap()) / 31.0 - 60.0;
    }
    let mut buffer = Buffer::new(SIZE, cells);
    let mut band = dataset.rasterband(1).unwrap();
    band.write((0, 0), SIZE, &mut buffer).unwrap();
    dataset.close().unwrap();
}

type Write = fn(&Path, &[&str]);

fn open(path: &Path) -> Dataset {
    crate::gis::open_raster(path).unwrap()
}

fn windows(band: &RasterBand<'_>, precision: Precision) -> Vec<Window> {
    let tiling = Tiling::new(SIZE, band.block_size(), precision);
    let tiles = tiling.over(&(0..SIZE.0), &(0..SIZE.1));
    tiles.map(|tile| tiling.window(tile)).collect()
}

fn by_gdal(band: &RasterBand<'_>, window: Window) -> Values {
    match Precision::of(band.band_type()) {
        Precision::Single => Values::Single(window::read(band, window).unwrap()),
        Precision::Double => Values::Double(window::read(band, window).unwrap()),
    }
}

fn compare(path: &Path, options: &[&str]) {
    let dataset = open(path);
    let band = dataset.rasterband(1).unwrap();
    let blocks = Deflated::of(path, &dataset, &band).unwrap();
    for window in windows(&band, Precision::of(band.band_type())) {
        let read = blocks.read(&band, window);
        assert_eq!(read, Ok(by_gdal(&band, window)), "{options:?}, {window:?}");
    }
}

#[test]
fn every_layout_is_read_as_gdal_reads_it() {
    let layouts: [&[&str]; 4] = [
        &["TILED=YES", "BLOCKXSIZE=64", "BLOCKYSIZE=64"],
        &["TILED=YES", "BLOCKXSIZE=16", "BLOCKYSIZE=48"],
        &["BLOCKYSIZE=1"],
        &["BLOCKYSIZE=7"],
    ];
    let of_whole: [Write; 4] = [write::<u8>, write::<i8>, write::<u16>, write::<i16>];
    let of_floats: [Write; 2] = [write::<f32>, write::<f64>];
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("dem.tif");
    for layout in layouts {
        for order in ["ENDIANNESS=LITTLE", "ENDIANNESS=BIG"] {
            for predictor in ["PREDICTOR=1", "PREDICTOR=2", "PREDICTOR=3"] {
                let whole = of_whole.iter().filter(|_| predictor != "PREDICTOR=3");
                for write in whole.chain(&of_floats) {
                    let options = [layout, &["COMPRESS=DEFLATE", order, predictor]].concat();
                    write(&path, &options);
                    compare(&path, &options);
                }
            }
        }
    }
}

#[test]
fn what_is_stored_otherwise_is_left_to_gdal() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("dem.tif");
    let otherwise: [&[&str]; 3] = [&[], &["COMPRESS=LZW"], &["COMPRESS=DEFLATE", "NBITS=12"]];
    for options in otherwise {
        write::<u16>(&path, options);
        let dataset = open(&path);
        let band = dataset.rasterband(1).unwrap();
        assert!(
            Deflated::of(&path, &dataset, &band).is_none(),
            "{options:?}"
        );
    }
    write::<i32>(&path, &["COMPRESS=DEFLATE"]);
    let dataset = open(&path);
    let band = dataset.rasterband(1).unwrap();
    assert!(Deflated::of(&path, &dataset, &band).is_none());
}

#[test]
fn a_block_that_is_not_there_and_a_part_of_one_are_left_to_gdal() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("dem.tif");
    let options = [
        "COMPRESS=DEFLATE",
        "SPARSE_OK=TRUE",
        "TILED=YES",
        "BLOCKXSIZE=64",
        "BLOCKYSIZE=64",
    ];
    let dataset = create::<f32>(&path, &options);
    let mut band = dataset.rasterband(1).unwrap();
    let mut buffer = Buffer::new((64, 64), vec![3.0; 64 * 64]);
    band.write((64, 64), (64, 64), &mut buffer).unwrap();
    dataset.close().unwrap();
    let dataset = open(&path);
    let band = dataset.rasterband(1).unwrap();
    let blocks = Deflated::of(&path, &dataset, &band).unwrap();
    let window = |column, row| Window {
        column,
        row,
        columns: 64,
        rows: 64,
    };
    assert_eq!(blocks.read(&band, window(0, 0)), Err(Unread::LeftToGdal));
    assert_eq!(blocks.read(&band, window(64, 32)), Err(Unread::LeftToGdal));
    let there = window(64, 64);
    assert_eq!(blocks.read(&band, there), Ok(by_gdal(&band, there)));
}

#[test]
fn a_damaged_block_is_left_to_gdal() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("dem.tif");
    write::<f32>(&path, &["COMPRESS=DEFLATE", "BLOCKYSIZE=190"]);
    let offset: u64 = {
        let dataset = open(&path);
        let band = dataset.rasterband(1).unwrap();
        let offset = band.metadata_item("BLOCK_OFFSET_0_0", "TIFF").unwrap();
        offset.parse().unwrap()
    };
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[usize::try_from(offset).unwrap() + 400] ^= 0x55;
    std::fs::write(&path, bytes).unwrap();
    let dataset = open(&path);
    let band = dataset.rasterband(1).unwrap();
    let blocks = Deflated::of(&path, &dataset, &band).unwrap();
    let all = Window {
        column: 0,
        row: 0,
        columns: SIZE.0,
        rows: SIZE.1,
    };
    assert_eq!(blocks.read(&band, all), Err(Unread::LeftToGdal));
}
