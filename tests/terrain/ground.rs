//! Between the cells, at the rim, in turned rasters, from several files.

use approx::assert_abs_diff_eq;
use sillmark::gis::GisError;
use sillmark::terrain::{Dem, Gap, TerrainError};

use super::fixture::{NORTH_UP, metres, metres_navd88, place, raster, terrain};

/// Four columns, three rows; the cell centres lie at 5, 15, 25, 35 m east and 5, 15, 25 m
/// south of the corner.
const CELLS: [f32; 12] = [
    1.0, 2.0, 4.0, 8.0, //
    3.0, 5.0, 7.0, 9.0, //
    2.0, 2.0, 2.0, 2.0,
];

fn dem() -> Dem {
    let scratch = tempfile::tempdir().unwrap();
    let path = raster(4, &CELLS).write(scratch.path(), "dem.tif");
    Dem::open(&path, &metres_navd88()).unwrap()
}

#[test]
fn bilinear_between_centres() {
    let dem = dem();
    // At a centre its own value.
    assert_abs_diff_eq!(
        metres(&dem, place(15.0, -15.0)).unwrap(),
        5.0,
        epsilon = 1e-6
    );
    // In the middle of four their mean: (1 + 2 + 3 + 5) / 4.
    assert_abs_diff_eq!(
        metres(&dem, place(10.0, -10.0)).unwrap(),
        2.75,
        epsilon = 1e-6
    );
    // At 0.2 east and 0.7 south between 2, 4, 5 and 7:
    // 0.3 (0.8 * 2 + 0.2 * 4) + 0.7 (0.8 * 5 + 0.2 * 7) = 0.72 + 3.78.
    assert_abs_diff_eq!(
        metres(&dem, place(17.0, -12.0)).unwrap(),
        4.5,
        epsilon = 1e-5
    );
}

#[test]
fn the_outer_half_cell_is_said_to_be_the_rim() {
    let dem = dem();
    let ground = dem.ground_at(place(2.0, -1.0)).unwrap().unwrap();
    assert!(ground.at_rim);
    assert_abs_diff_eq!(ground.elevation.height().value, 1.0, epsilon = 1e-9);
    let ground = dem.ground_at(place(12.0, -12.0)).unwrap().unwrap();
    assert!(!ground.at_rim && !ground.no_data_nearby);
    assert_eq!(&*ground.source, "dem.tif");
    for outside in [(-1.0, -5.0), (41.0, -5.0), (5.0, 1.0), (5.0, -31.0)] {
        assert_eq!(metres(&dem, place(outside.0, outside.1)), Err(Gap::Outside));
    }
}

#[test]
fn far_away_is_outside() {
    let dem = dem();
    let madrid = sillmark::site::Location::from_degrees(-3.7, 40.4).unwrap();
    assert_eq!(metres(&dem, madrid), Err(Gap::Outside));
}

#[test]
fn a_turned_raster_gives_the_same_ground() {
    let scratch = tempfile::tempdir().unwrap();
    // The plane z = 0.1 east - 0.2 north on cells turned by the angle of a 3-4-5 triangle.
    let turned = [580_050.0, 8.0, 6.0, 4_510_000.0, 6.0, -8.0];
    let mut cells = Vec::new();
    for row in 0..12_u8 {
        for column in 0..12_u8 {
            let (column, row) = (f64::from(column) + 0.5, f64::from(row) + 0.5);
            let east = 50.0 + 8.0 * column + 6.0 * row;
            let north = 6.0 * column - 8.0 * row;
            cells.push(20.0 + 0.1 * east - 0.2 * north);
        }
    }
    let mut raster = raster(12, &cells);
    raster.transform = turned;
    let path = raster.write(scratch.path(), "turned.tif");
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    assert_abs_diff_eq!(dem.cell_size().value, 10.0, epsilon = 1e-9);
    for (east, north) in [(130.0, -20.0), (117.3, 3.9), (150.0, -41.0)] {
        let expected = 20.0 + 0.1 * east - 0.2 * north;
        assert_abs_diff_eq!(
            metres(&dem, place(east, north)).unwrap(),
            expected,
            epsilon = 1e-5
        );
    }
}

#[test]
fn the_finest_raster_that_has_ground_answers() {
    let scratch = tempfile::tempdir().unwrap();
    let mut coarse = raster(4, &[50.0_f32; 12]);
    coarse.transform = [580_000.0, 30.0, 0.0, 4_510_000.0, 0.0, -30.0];
    let coarse = coarse.write(scratch.path(), "coarse.tif");
    let mut cells = [7.0_f32; 36];
    cells[0] = f32::NAN;
    let mut fine = raster(6, &cells);
    fine.transform = [580_000.0, 5.0, 0.0, 4_510_000.0, 0.0, -5.0];
    let fine = fine.write(scratch.path(), "fine.tif");
    let open = |path| Dem::open(path, &metres_navd88()).unwrap();
    let terrain = terrain(vec![open(&coarse), open(&fine)]);
    let names: Vec<_> = terrain
        .dems()
        .iter()
        .map(|dem| dem.name().to_owned())
        .collect();
    assert_eq!(names, ["fine.tif", "coarse.tif"]);
    let source = |east, north| {
        let ground = terrain.ground_at(place(east, north)).unwrap();
        ground.map(|ground| ground.source)
    };
    assert_eq!(source(20.0, -20.0), Ok("fine.tif".into()));
    assert_eq!(source(60.0, -60.0), Ok("coarse.tif".into()));
    assert_eq!(
        source(4.0, -4.0),
        Ok("coarse.tif".into()),
        "the fine one is void there"
    );
    assert_eq!(source(200.0, -20.0), Err(Gap::Outside));
}

#[test]
fn a_raster_that_is_cut_short_fails_and_is_no_void() {
    let scratch = tempfile::tempdir().unwrap();
    let cells = vec![12.5_f32; 300 * 300];
    let path = raster(300, &cells).write(scratch.path(), "dem.tif");
    let bytes = std::fs::read(&path).unwrap();
    std::fs::write(&path, &bytes[..bytes.len() / 2]).unwrap();
    // The directory of a file that GDAL writes in one go stands at its start.
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    let error = dem.ground_at(place(1500.0, -2990.0)).unwrap_err();
    assert!(
        matches!(error, TerrainError::Gis(GisError::Read { .. })),
        "{error}"
    );
    assert!(error.to_string().contains("dem.tif"), "{error}");
}

#[test]
fn an_ascii_grid_that_is_cut_short_fails_too() {
    let scratch = tempfile::tempdir().unwrap();
    let text =
        "ncols 2\nnrows 3\nxllcorner 580000\nyllcorner 4509970\ncellsize 10\n1.5 2.5\n3.5 4.";
    let path = crate::support::write(scratch.path(), "dem.asc", text);
    let statement = sillmark::terrain::DemStatement {
        crs: Some("EPSG:26918".into()),
        ..metres_navd88()
    };
    let error = Dem::open(&path, &statement).and_then(|dem| dem.ground_at(place(10.0, -25.0)));
    let error = error.unwrap_err().to_string();
    assert!(error.contains("dem.asc"), "{error}");
}

#[test]
fn an_ascii_grid_is_read() {
    let scratch = tempfile::tempdir().unwrap();
    let text = "ncols 2\nnrows 2\nxllcorner 580000\nyllcorner 4509980\ncellsize 10\nNODATA_value -9999\n1.5 2.5\n3.5 4.5\n";
    let path = crate::support::write(scratch.path(), "dem.asc", text);
    let statement = sillmark::terrain::DemStatement {
        crs: Some("EPSG:26918".into()),
        ..metres_navd88()
    };
    let dem = Dem::open(&path, &statement).unwrap();
    assert_abs_diff_eq!(
        metres(&dem, place(10.0, -10.0)).unwrap(),
        3.0,
        epsilon = 1e-6
    );
    let error = Dem::open(&path, &metres_navd88()).map(|_| ()).unwrap_err();
    assert!(error.to_string().contains("--dem-crs"), "{error}");
}

#[test]
fn only_one_band() {
    sillmark::gis::start();
    let scratch = tempfile::tempdir().unwrap();
    let path = scratch.path().join("picture.tif");
    let driver = gdal::DriverManager::get_driver_by_name("GTiff").unwrap();
    let mut dataset = driver
        .create_with_band_type::<u8, _>(&path, 4, 4, 3)
        .unwrap();
    dataset.set_geo_transform(&NORTH_UP).unwrap();
    dataset.close().unwrap();
    let error = Dem::open(&path, &metres_navd88()).map(|_| ()).unwrap_err();
    assert!(error.to_string().contains("has 3 bands"), "{error}");
}
