//! Lowest and highest ground around a building.

use approx::assert_abs_diff_eq;
use sillmark::quantity::{Length, unit::meter};
use sillmark::terrain::{Dem, Gap};

use super::fixture::{metres_navd88, place, raster};

/// The plane z = 20 + 0.1 east − 0.05 north, 40 × 40 cells of 10 m.
fn plane() -> Vec<f64> {
    let mut cells = Vec::new();
    for row in 0..40_u8 {
        for column in 0..40_u8 {
            let (east, south) = (10.0 * f64::from(column) + 5.0, 10.0 * f64::from(row) + 5.0);
            cells.push(20.0 + 0.1 * east + 0.05 * south);
        }
    }
    cells
}

fn around(cells: &[f64], radius: f64) -> Result<sillmark::terrain::Grade, Gap> {
    let scratch = tempfile::tempdir().unwrap();
    let path = raster(40, cells).write(scratch.path(), "dem.tif");
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    dem.grade_around(place(200.0, -200.0), Length::new::<meter>(radius))
        .unwrap()
}

#[test]
fn a_plane_has_its_extremes_on_the_rim() {
    // Slope √(0.1² + 0.05²) = 0.111803; the middle lies at 20 + 20 + 10 = 50 m. Sixteen
    // points catch the extreme direction to within 11.25°, cos 11.25° = 0.981.
    for radius in [3.0, 25.0, 100.0] {
        let grade = around(&plane(), radius).unwrap();
        let rise = 0.111_803_4 * radius;
        for (found, sign) in [(grade.highest, 1.0), (grade.lowest, -1.0)] {
            let found = sign * (found.height().get::<meter>() - 50.0);
            assert!(
                found <= rise * 1.001 && found >= 0.98 * rise,
                "{radius}: {found} of {rise}"
            );
        }
        assert_eq!(grade.without_value, 0);
        assert!(grade.samples >= 17);
    }
}

#[test]
fn a_single_pit_within_the_disk_is_found() {
    let mut cells = vec![30.0; 1600];
    cells[18 * 40 + 21] = 12.0; // centre at 215 E, 185 S: 21.2 m from the place
    let grade = around(&cells, 22.0).unwrap();
    assert_abs_diff_eq!(grade.lowest.height().get::<meter>(), 12.0, epsilon = 1e-9);
    // At 5 m the disk touches no cell that has a share of the pit.
    let grade = around(&cells, 4.0).unwrap();
    assert_abs_diff_eq!(grade.lowest.height().get::<meter>(), 30.0, epsilon = 1e-9);
}

#[test]
fn voids_are_counted_and_nothing_but_voids_is_a_gap() {
    let mut cells = plane();
    cells[20 * 40 + 20] = -9999.0;
    let grade = around(&cells, 40.0).unwrap();
    assert!(grade.without_value > 0 && grade.without_value < grade.samples);
    assert!(grade.lowest.height().get::<meter>() > 40.0);
    assert_eq!(around(&vec![-9999.0; 1600], 40.0), Err(Gap::Void));
}

#[test]
fn the_radius_is_in_metres_in_degrees_too() {
    // z = 1000 · degrees of longitude west of −74: a radius of 100 m at 40.7 N is
    // 100 / (cos 40.7° · 111 320 m) to 0.3 %, 0.001 185 degrees, 1.185 m here.
    let scratch = tempfile::tempdir().unwrap();
    let step = 0.0001;
    let mut cells = Vec::new();
    for _ in 0..100 {
        for column in 0..100_u8 {
            cells.push(1000.0 * step * (f64::from(column) + 0.5));
        }
    }
    let mut raster = raster(100, &cells);
    raster.transform = [-74.0, step, 0.0, 40.705, 0.0, -step];
    raster.crs = "EPSG:4269";
    let dem = Dem::open(&raster.write(scratch.path(), "dem.tif"), &metres_navd88()).unwrap();
    let place = sillmark::site::Location::from_degrees(-73.995, 40.7).unwrap();
    let grade = dem
        .grade_around(place, Length::new::<meter>(100.0))
        .unwrap()
        .unwrap();
    let half = (grade.highest.height() - grade.lowest.height()).get::<meter>() / 2.0;
    assert_abs_diff_eq!(half, 1.185, epsilon = 0.005);
}
