//! Files of many layouts: a crop is the whole file's window, cell by cell as GDAL reads both.

use gdal::Metadata as _;
use sillmark::terrain::Dem;

use super::fixture::{
    NORTH_UP, SIZE, assert_window, collect, height, metres_navd88, served, usual, write,
};
use crate::support::skip;
use crate::terrain::fixture::place;

const TILED: [&str; 3] = ["TILED=YES", "BLOCKXSIZE=64", "BLOCKYSIZE=48"];

/// Writes a file, collects a part of it, and compares both.
fn check<T: gdal::raster::GdalType + Copy>(options: &[&str], cell: impl Fn(usize, usize) -> T) {
    check_at(options, NORTH_UP, cell);
}

fn check_at<T: gdal::raster::GdalType + Copy>(
    options: &[&str],
    transform: [f64; 6],
    cell: impl Fn(usize, usize) -> T,
) {
    let folder = tempfile::tempdir().unwrap();
    let whole = folder.path().join("whole.tif");
    let written = write(&whole, options, transform, Some(-9999.0), cell);
    written.close().unwrap();
    let server = served(&whole);
    let site = place(3500.0, -2600.0);
    let collected = collect(&server, &[site], 150.0, folder.path()).unwrap();
    let crop = collected.file.unwrap();
    let (column, row) = assert_window(&whole, &crop);
    if options.contains(&"TILED=YES") && transform == NORTH_UP {
        // 15 cells to each side of column 350 and row 260, and three more.
        assert_eq!((column, row), (320, 192));
        let dataset = sillmark::gis::open_raster(&crop).unwrap();
        assert_eq!(dataset.raster_size(), (64, 96));
    }
    let statement = metres_navd88();
    let (whole, crop) = (
        Dem::open(&whole, &statement).unwrap(),
        Dem::open(&crop, &statement).unwrap(),
    );
    let ground = |dem: &Dem| dem.ground_at(site).unwrap().unwrap().elevation;
    let difference = ground(&whole).above(ground(&crop)).unwrap();
    assert!(
        difference.get::<sillmark::quantity::unit::meter>().abs() < 1e-9,
        "{options:?}"
    );
}

fn single(column: usize, row: usize) -> f32 {
    height(column, row) as f32
}

#[test]
fn every_compression_and_predictor() {
    for compression in ["NONE", "DEFLATE", "LZW", "PACKBITS"] {
        let compress = format!("COMPRESS={compression}");
        for block in [&TILED[..], &["BLOCKYSIZE=7"], &["BLOCKYSIZE=1"]] {
            check(&[block, &[&compress]].concat(), single);
        }
        if matches!(compression, "DEFLATE" | "LZW") {
            for predictor in ["PREDICTOR=2", "PREDICTOR=3"] {
                check(&[&TILED[..], &[&compress, predictor]].concat(), single);
            }
        }
    }
}

#[test]
fn every_type_of_cells() {
    let options = [&TILED[..], &["COMPRESS=DEFLATE", "PREDICTOR=2"]].concat();
    let whole = |column, row| (column % 90 + row % 70) as f64;
    check(&options, |column, row| whole(column, row) as i16);
    check(&options, |column, row| whole(column, row) as u16);
    check(&options, |column, row| whole(column, row) as i32);
    check(&options, |column, row| whole(column, row) as u8);
    check(&options, height);
}

#[test]
fn both_orders_of_bytes_and_both_widths_of_offsets() {
    for endianness in ["ENDIANNESS=BIG", "ENDIANNESS=LITTLE"] {
        for big in ["BIGTIFF=YES", "BIGTIFF=NO"] {
            for block in [&TILED[..], &["BLOCKYSIZE=9"]] {
                for more in ["COMPRESS=DEFLATE", "COMPRESS=NONE"] {
                    let options = [block, &[endianness, big, more]].concat();
                    check(&options, height);
                }
            }
        }
    }
}

#[test]
fn strips_that_hold_the_whole_image() {
    check(&["BLOCKYSIZE=530", "COMPRESS=LZW"], single);
    check(&["BLOCKYSIZE=500"], single);
}

#[test]
fn grids_that_are_turned_or_run_upwards() {
    // The middle of the grid is near the same place.
    check_at(
        &TILED,
        [581_000.0, 8.0, 6.0, 4_507_000.0, 6.0, -8.0],
        single,
    );
    check_at(
        &TILED,
        [580_000.0, 10.0, 0.0, 4_504_700.0, 0.0, 10.0],
        single,
    );
}

#[test]
fn what_the_file_says_of_itself_stays() {
    let folder = tempfile::tempdir().unwrap();
    let whole = folder.path().join("whole.tif");
    let options = [&TILED[..], &["COMPRESS=DEFLATE"]].concat();
    let mut written = write(&whole, &options, NORTH_UP, Some(-32768.0), |column, row| {
        i16::try_from(column + row).unwrap()
    });
    written
        .set_metadata_item("TIFFTAG_DATETIME", "2014:05:01 00:00:00", "")
        .unwrap();
    written
        .set_metadata_item("AREA_OR_POINT", "Point", "")
        .unwrap();
    let mut band = written.rasterband(1).unwrap();
    band.set_scale(0.01).unwrap();
    band.set_offset(3.0).unwrap();
    band.set_description("bare earth").unwrap();
    written.close().unwrap();
    let server = served(&whole);
    let site = place(3500.0, -2600.0);
    let collected = collect(&server, &[site], 50.0, folder.path()).unwrap();
    let crop = collected.file.unwrap();
    assert_eq!(crop, folder.path().join("dem.tif"));
    assert_window(&whole, &crop);
    let [one, other] = [&whole, &crop].map(|path| sillmark::gis::open_raster(path).unwrap());
    for key in ["SOURCE", "TIFFTAG_DATETIME", "AREA_OR_POINT"] {
        let value = one.metadata_item(key, "");
        assert!(
            value.is_some() && other.metadata_item(key, "") == value,
            "{key}"
        );
    }
    let wkt = |dataset: &gdal::Dataset| dataset.spatial_ref().unwrap().to_wkt().unwrap();
    assert_eq!(wkt(&one), wkt(&other));
    let of = |dataset: &gdal::Dataset| {
        let band = dataset.rasterband(1).unwrap();
        let said = band.description().unwrap();
        (
            band.scale(),
            band.offset(),
            band.no_data_value(),
            band.block_size(),
            said,
        )
    };
    assert_eq!(of(&one), of(&other));
    assert_eq!(of(&one).0, Some(0.01));
    let dem = Dem::open(&crop, &metres_navd88()).unwrap();
    assert_eq!(dem.dated(), Some("image made 2014-05-01"));
    let fetched = dem.fetched().unwrap();
    assert_eq!(fetched.from, collected.address);
    assert!(fetched.from.ends_with("/models/dem.tif?token=…"));
    assert_eq!(*fetched, collected.fetched);
    assert!(
        fetched.on.ends_with('Z') && fetched.on.len() == 20,
        "{}",
        fetched.on
    );
    // The file itself was fetched from nowhere.
    assert_eq!(Dem::open(&whole, &metres_navd88()).unwrap().fetched(), None);
}

#[test]
fn smaller_copies_are_left_out() {
    let folder = tempfile::tempdir().unwrap();
    let whole = usual(folder.path());
    let mut dataset = gdal::Dataset::open_ex(
        &whole,
        gdal::DatasetOptions {
            open_flags: gdal::GdalOpenFlags::GDAL_OF_UPDATE | gdal::GdalOpenFlags::GDAL_OF_RASTER,
            ..Default::default()
        },
    )
    .unwrap();
    dataset.build_overviews("AVERAGE", &[2, 4, 8], &[]).unwrap();
    dataset.close().unwrap();
    let server = served(&whole);
    let all = [place(2.0, -2.0), place(6998.0, -5298.0)];
    let crop = collect(&server, &all, 9000.0, folder.path())
        .unwrap()
        .file
        .unwrap();
    assert_eq!(assert_window(&whole, &crop), (0, 0));
    let dataset = sillmark::gis::open_raster(&crop).unwrap();
    assert_eq!(dataset.raster_size(), SIZE);
    assert_eq!(dataset.rasterband(1).unwrap().overview_count().unwrap(), 0);
}

#[test]
fn a_cloud_optimised_file_as_gdal_writes_it() {
    // Blocks stand between their lengths there, and all directories before them.
    let folder = tempfile::tempdir().unwrap();
    let whole = usual(folder.path());
    let source = sillmark::gis::open_raster(&whole).unwrap();
    let cog = gdal::DriverManager::get_driver_by_name("COG");
    let Ok(cog) = cog else {
        skip("this GDAL has no driver for cloud-optimised files");
        return;
    };
    let path = folder.path().join("cog.tif");
    let options = gdal::raster::RasterCreationOptions::from_iter(["BLOCKSIZE=128", "COMPRESS=LZW"]);
    source
        .create_copy(&cog, &path, &options)
        .unwrap()
        .close()
        .unwrap();
    let server = served(&path);
    let crop = collect(&server, &[place(3500.0, -2600.0)], 150.0, folder.path());
    assert_window(&path, &crop.unwrap().file.unwrap());
}
