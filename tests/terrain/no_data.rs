//! Cells without a value, however they are marked.

use sillmark::terrain::{Dem, Gap};

use super::fixture::{metres, metres_navd88, place, raster};

/// A 4 × 4 raster of 5 m with one odd cell, second of the second row.
fn with_odd_cell<T: gdal::raster::GdalType + Copy>(
    usual: T,
    odd: T,
    no_data: Option<f64>,
) -> (Result<f64, Gap>, bool) {
    let scratch = tempfile::tempdir().unwrap();
    let mut cells = [usual; 16];
    cells[5] = odd;
    let mut raster = raster(4, &cells);
    raster.no_data = no_data;
    let dem = Dem::open(&raster.write(scratch.path(), "dem.tif"), &metres_navd88()).unwrap();
    let aside = dem.ground_at(place(30.0, -30.0)).unwrap().unwrap();
    (metres(&dem, place(17.0, -17.0)), aside.no_data_nearby)
}

#[test]
fn every_mark_is_a_void() {
    let void = (Err(Gap::Void), true);
    assert_eq!(with_odd_cell(5.0_f32, -9999.0, Some(-9999.0)), void);
    assert_eq!(with_odd_cell(5.0_f32, f32::NAN, None), void);
    assert_eq!(with_odd_cell(5.0_f32, f32::NAN, Some(f64::NAN)), void);
    assert_eq!(with_odd_cell(5.0_f32, f32::INFINITY, None), void);
    assert_eq!(
        with_odd_cell(5.0_f32, f32::MIN, Some(-3.402_823_060_737_096_5e38)),
        void
    );
    assert_eq!(with_odd_cell(5.0_f64, -32768.0, Some(-32768.0)), void);
    assert_eq!(with_odd_cell(5_i16, -32768, Some(-32768.0)), void);
    assert_eq!(with_odd_cell(5_u16, 65535, Some(65535.0)), void);
    assert_eq!(with_odd_cell(5_u8, 255, Some(255.0)), void);
    assert_eq!(with_odd_cell(5_i64, -9999, Some(-9999.0)).0, Err(Gap::Void));
}

#[test]
fn an_absurd_height_is_a_void_without_any_mark() {
    let void = (Err(Gap::Void), true);
    assert_eq!(with_odd_cell(5.0_f32, -9999.0, None), void);
    assert_eq!(with_odd_cell(5.0_f32, 1e20, None), void);
    assert_eq!(with_odd_cell(5_u16, 65535, None), void);
    assert_eq!(with_odd_cell(5_i16, -32767, Some(-9999.0)), void);
}

#[test]
fn a_mark_that_the_type_cannot_hold_hides_nothing() {
    let (ground, nearby) = with_odd_cell(5_u16, 5, Some(-9999.0));
    assert!((ground.unwrap() - 5.0).abs() < 1e-9 && !nearby);
    let (ground, _) = with_odd_cell(5_u8, 0, Some(-9999.0));
    assert!(ground.is_ok());
}

#[test]
fn a_cell_without_a_share_does_not_count() {
    let scratch = tempfile::tempdir().unwrap();
    let mut cells = [5.0_f32; 16];
    cells[5] = f32::NAN;
    let path = raster(4, &cells).write(scratch.path(), "dem.tif");
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    // On the centre of the neighbour: the void has a share of zero, but is near.
    let ground = dem.ground_at(place(25.0, -15.0)).unwrap().unwrap();
    assert!(ground.no_data_nearby);
}

#[test]
fn scale_and_offset_are_applied_and_the_mark_is_not_scaled() {
    let scratch = tempfile::tempdir().unwrap();
    let mut cells = [1250_i16; 16];
    cells[5] = -9999;
    let mut raster = raster(4, &cells);
    raster.no_data = Some(-9999.0);
    let path = raster.write(scratch.path(), "dem.tif");
    let options = gdal::DatasetOptions {
        open_flags: gdal::GdalOpenFlags::GDAL_OF_UPDATE,
        ..gdal::DatasetOptions::default()
    };
    let dataset = gdal::Dataset::open_ex(&path, options).unwrap();
    let mut band = dataset.rasterband(1).unwrap();
    band.set_scale(0.01).unwrap();
    band.set_offset(-2.0).unwrap();
    dataset.close().unwrap();
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    // 1250 · 0.01 − 2 = 10.5.
    assert!((metres(&dem, place(30.0, -30.0)).unwrap() - 10.5).abs() < 1e-9);
    assert_eq!(metres(&dem, place(17.0, -17.0)), Err(Gap::Void));
}

#[test]
fn a_mask_hides_cells() {
    let scratch = tempfile::tempdir().unwrap();
    let path = raster(4, &[5.0_f32; 16]).write(scratch.path(), "dem.tif");
    let options = gdal::DatasetOptions {
        open_flags: gdal::GdalOpenFlags::GDAL_OF_UPDATE,
        ..gdal::DatasetOptions::default()
    };
    let dataset = gdal::Dataset::open_ex(&path, options).unwrap();
    let mut band = dataset.rasterband(1).unwrap();
    band.create_mask_band(true).unwrap();
    let mut mask = band.open_mask_band().unwrap();
    mask.fill(255.0, None).unwrap();
    let mut hidden = gdal::raster::Buffer::new((1, 1), vec![0_u8]);
    mask.write((1, 1), (1, 1), &mut hidden).unwrap();
    dataset.close().unwrap();
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    assert_eq!(metres(&dem, place(17.0, -17.0)), Err(Gap::Void));
    assert!(metres(&dem, place(35.0, -35.0)).is_ok());
}
