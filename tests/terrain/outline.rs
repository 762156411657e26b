//! The ground along the outline of a building.

use approx::assert_abs_diff_eq;
use sillmark::quantity::unit::meter;
use sillmark::site::Footprint;
use sillmark::terrain::{Dem, Gap, Grade};

use super::fixture::{metres_navd88, place, raster};

/// The plane z = 20 + 0.1 east + 0.05 south, 40 × 40 cells of 10 m.
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

/// An outline through places so many metres east and south of the raster's corner.
fn outline(corners: &[(f64, f64)]) -> Footprint {
    let corners = corners.iter().map(|(east, south)| place(*east, -south));
    Footprint::new(corners.collect()).unwrap()
}

fn along(cells: &[f64], corners: &[(f64, f64)]) -> Result<Grade, Gap> {
    let scratch = tempfile::tempdir().unwrap();
    let path = raster(40, cells).write(scratch.path(), "dem.tif");
    let dem = Dem::open(&path, &metres_navd88()).unwrap();
    dem.grade_along(&outline(corners)).unwrap()
}

const HOUSE: [(f64, f64); 4] = [
    (100.0, 100.0),
    (160.0, 100.0),
    (160.0, 130.0),
    (100.0, 130.0),
];

#[test]
fn on_a_plane_the_extremes_are_corners() {
    let grade = along(&plane(), &HOUSE).unwrap();
    // 20 + 10 + 5 and 20 + 16 + 6.5.
    assert_abs_diff_eq!(grade.lowest.height().get::<meter>(), 35.0, epsilon = 1e-6);
    assert_abs_diff_eq!(grade.highest.height().get::<meter>(), 42.5, epsilon = 1e-6);
    // 180 m at two points to each cell of 10 m; digits of a projection may add one a side.
    assert!((36..=40).contains(&grade.samples), "{}", grade.samples);
    assert_eq!(grade.without_value, 0);
}

#[test]
fn a_mound_within_the_walls_does_not_count_and_one_against_them_does() {
    let mut cells = plane();
    cells[11 * 40 + 13] = 90.0; // centre at 135 E, 115 S: its share ends 10 m from it
    let inside = along(&cells, &HOUSE).unwrap();
    assert_abs_diff_eq!(inside.highest.height().get::<meter>(), 42.5, epsilon = 1e-6);
    let mut cells = plane();
    cells[10 * 40 + 13] = 90.0; // centre at 135 E, 105 S: 5 m from the north wall
    let at_wall = along(&cells, &HOUSE).unwrap();
    // Half of the mound and half of the cell before it, 20 + 13.5 + 4.75, right before the
    // mound; the nearest point lies within a quarter of a cell of that.
    let before = f64::midpoint(90.0, 38.25);
    let found = at_wall.highest.height().get::<meter>();
    let nearby = before - 0.25 * (before - 38.25);
    assert!(found <= before && found > nearby - 0.5, "{found}");
}

#[test]
fn voids_along_the_wall_are_counted_and_nothing_else_is_a_gap() {
    let mut cells = plane();
    cells[10 * 40 + 13] = -9999.0;
    let grade = along(&cells, &HOUSE).unwrap();
    assert!(grade.without_value > 0 && grade.without_value < grade.samples);
    assert_eq!(along(&vec![-9999.0; 1600], &HOUSE), Err(Gap::Void));
    let elsewhere = HOUSE.map(|(east, south)| (east + 500.0, south));
    assert_eq!(along(&plane(), &elsewhere), Err(Gap::Outside));
}
