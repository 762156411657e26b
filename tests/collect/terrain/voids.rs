//! What is not stored, masked or not read is never ground.

use std::path::{Path, PathBuf};

use gdal::config::set_thread_local_config_option;
use gdal::raster::Buffer;
use sillmark::terrain::{Dem, Gap};

use super::fixture::{NORTH_UP, SIZE, collect, height, metres_navd88, served, write};
use crate::terrain::fixture::{metres, place};

/// A file whose tiles west of the middle are stored, and no others.
fn sparse(folder: &Path, no_data: Option<f64>, block: &[&str]) -> PathBuf {
    let path = folder.join("sparse.tif");
    let options = [block, &["COMPRESS=DEFLATE", "SPARSE_OK=TRUE"]].concat();
    // Blocks of nothing but the mark, or zeros, are left out by GDAL.
    let blank = no_data.unwrap_or(0.0);
    let written = write(&path, &options, NORTH_UP, no_data, |column, row| {
        if column < 320 && row < 256 {
            height(column, row) as f32
        } else {
            blank as f32
        }
    });
    written.close().unwrap();
    path
}

const TILED: [&str; 3] = ["TILED=YES", "BLOCKXSIZE=64", "BLOCKYSIZE=64"];

#[test]
fn blocks_that_are_not_stored_are_void() {
    let folder = tempfile::tempdir().unwrap();
    for no_data in [None, Some(-9999.0)] {
        for block in [&TILED[..], &["BLOCKYSIZE=8"]] {
            let path = sparse(folder.path(), no_data, block);
            let stored = std::fs::metadata(&path).unwrap().len();
            assert!(stored < 300_000, "{stored}");
            let server = served(&path);
            let site = place(3150.0, -2500.0);
            let crop = collect(&server, &[site], 300.0, folder.path())
                .unwrap()
                .file;
            let crop = Dem::open(&crop.unwrap(), &metres_navd88()).unwrap();
            let whole = Dem::open(&path, &metres_navd88()).unwrap();
            let (one, other) = (metres(&whole, site).unwrap(), metres(&crop, site).unwrap());
            assert!((one - other).abs() < 1e-9);
            // South of the stored ones; without a mark the file itself would read as 0 m there.
            let south = place(3150.0, -2750.0);
            assert_eq!(
                metres(&crop, south),
                Err(Gap::Void),
                "{no_data:?} {block:?}"
            );
            let of_file = metres(&whole, south);
            assert_eq!(
                of_file,
                if no_data.is_some() {
                    Err(Gap::Void)
                } else {
                    Ok(0.0)
                }
            );
        }
    }
}

#[test]
fn what_was_not_read_is_void_without_a_mark_in_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("whole.tif");
    for options in [
        &TILED[..],
        &["BLOCKYSIZE=8", "BIGTIFF=YES", "ENDIANNESS=BIG"],
    ] {
        let written = write(&path, options, NORTH_UP, None, |column, row| {
            (column % 50 + row % 40 + 5) as u16
        });
        written.close().unwrap();
        let server = served(&path);
        let places = [place(400.0, -400.0), place(6500.0, -5000.0)];
        let crop = collect(&server, &places, 100.0, folder.path())
            .unwrap()
            .file;
        let crop = Dem::open(&crop.unwrap(), &metres_navd88()).unwrap();
        let whole = Dem::open(&path, &metres_navd88()).unwrap();
        for site in places {
            let (one, other) = (metres(&whole, site).unwrap(), metres(&crop, site).unwrap());
            assert!((one - other).abs() < 1e-9);
        }
        assert_eq!(metres(&crop, place(3500.0, -2600.0)), Err(Gap::Void));
    }
}

/// A file with a mask of its own: every cell whose column and row add up to a multiple of seven
/// is hidden.
fn masked(folder: &Path, options: &[&str]) -> PathBuf {
    let path = folder.join("masked.tif");
    set_thread_local_config_option("GDAL_TIFF_INTERNAL_MASK", "YES").unwrap();
    let dataset = write(&path, options, NORTH_UP, None, |column, row| {
        height(column, row) as f32
    });
    let mut band = dataset.rasterband(1).unwrap();
    band.create_mask_band(true).unwrap();
    let cells = (0..SIZE.1).flat_map(|row| (0..SIZE.0).map(move |column| column + row));
    let shown = cells.map(|sum| if sum % 7 == 0 { 0_u8 } else { 255 });
    let mut buffer = Buffer::new(SIZE, shown.collect());
    band.open_mask_band()
        .unwrap()
        .write((0, 0), SIZE, &mut buffer)
        .unwrap();
    dataset.close().unwrap();
    path
}

#[test]
fn a_mask_comes_with_its_image() {
    let folder = tempfile::tempdir().unwrap();
    for options in [
        &TILED[..],
        &[
            "TILED=YES",
            "BLOCKXSIZE=128",
            "BLOCKYSIZE=64",
            "COMPRESS=LZW",
        ],
        &["BLOCKYSIZE=6", "COMPRESS=DEFLATE"],
        &["BLOCKYSIZE=6", "BIGTIFF=YES"],
    ] {
        let path = masked(folder.path(), options);
        let beside = folder.path().join("masked.tif.msk");
        assert!(!beside.exists(), "the mask is in the file");
        let server = served(&path);
        let site = place(3500.0, -2600.0);
        let places = [site, place(300.0, -300.0)];
        let crop = collect(&server, &places, 60.0, folder.path()).unwrap().file;
        let crop = Dem::open(&crop.unwrap(), &metres_navd88()).unwrap();
        let whole = Dem::open(&path, &metres_navd88()).unwrap();
        let mut voids = 0;
        for step in 0..100 {
            // Middles of cells.
            let at = place(
                3455.0 + f64::from(step % 10 * 10),
                -2555.0 - f64::from(step / 10 * 10),
            );
            match (metres(&whole, at), metres(&crop, at)) {
                (Ok(one), Ok(other)) => assert!((one - other).abs() < 1e-9),
                (one, other) => {
                    assert_eq!(one, other);
                    voids += 1;
                }
            }
        }
        assert!((10..90).contains(&voids), "{voids}");
        assert_eq!(metres(&crop, place(1900.0, -1500.0)), Err(Gap::Void));
    }
}
