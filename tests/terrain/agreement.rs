//! Whatever the layout of a file, the library says what the formulas say cell by cell.

use std::path::Path;

use geo::Coord;
use sillmark::crs::{CrsDefinition, LocalFrame, Projector};
use sillmark::quantity::{Length, LengthUnit, VerticalDatum, unit::meter};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, Gap, Terrain};

use super::by_cell::ByCell;
use super::layout::{Layout, Random};

const UTM: &str = "EPSG:26918";
const NORTH_UP: [f64; 6] = [580_000.0, 1.0, 0.0, 4_510_000.0, 0.0, -1.0];

/// Hills with voids and, here and there, a height that is none.
fn heights(columns: usize, rows: usize, seed: u64) -> Vec<f64> {
    let mut random = Random::new(seed);
    let mut cells = Vec::with_capacity(columns * rows);
    for row in 0..rows {
        for column in 0..columns {
            let hill = (column as f64 / 17.0).sin() * 40.0 + (row as f64 / 23.0).cos() * 30.0;
            cells.push((120.0 + hill + 5.0 * random.next()).round());
        }
    }
    for _ in 0..40 {
        let (column, row) = (random.below(columns), random.below(rows));
        let side = 1 + random.below(9);
        for y in row..(row + side).min(rows) {
            for x in column..(column + side).min(columns) {
                cells[y * columns + x] = 9999.0;
            }
        }
    }
    cells
}

/// What is compared: the file, and the same cells in memory.
struct Pair {
    dem: Dem,
    by_cell: ByCell,
    projector: Projector,
    /// Degrees of the first corner, of the end of the first row and of the first column.
    corners: [Coord<f64>; 3],
}

impl Pair {
    fn new(folder: &Path, layout: &Layout<'_>, unit: LengthUnit) -> Self {
        let stored = heights(layout.columns, layout.rows, 7);
        let path = layout.write(folder, &stored);
        let statement = DemStatement {
            unit: Some(unit),
            datum: Some(VerticalDatum::Navd88),
            crs: None,
        };
        let metres_per_unit = unit.length(1.0).get::<meter>();
        let metres = stored.iter().map(|stored| {
            let metres = (stored * layout.scale + layout.offset) * metres_per_unit;
            let is_height = *stored != 9999.0 && (-500.0..=9000.0).contains(&metres);
            if is_height { metres } else { f64::NAN }
        });
        let crs = CrsDefinition::from_text(layout.crs).unwrap().horizontal;
        let projector = Projector::new(crs).unwrap();
        let [x, column_x, row_x, y, column_y, row_y] = layout.transform;
        let (columns, rows) = (layout.columns as f64, layout.rows as f64);
        let corners = [(0.0, 0.0), (columns, 0.0), (0.0, rows)].map(|(column, row)| {
            degrees(
                &projector,
                x + column_x * column + row_x * row,
                y + column_y * column + row_y * row,
            )
        });
        Self {
            dem: Dem::open(&path, &statement).unwrap(),
            by_cell: ByCell {
                columns: layout.columns,
                rows: layout.rows,
                transform: layout.transform,
                metres: metres.collect(),
            },
            projector,
            corners,
        }
    }

    /// A place by columns and rows from the first corner, to within the bend of the map.
    fn place(&self, column: f64, row: f64) -> Location {
        let [corner, along, down] = self.corners;
        let across = column / self.by_cell.columns as f64;
        let down_by = row / self.by_cell.rows as f64;
        let place = corner + (along - corner) * across + (down - corner) * down_by;
        Location::from_degrees(place.x, place.y).unwrap()
    }

    /// A place anywhere, often by the rim, on the border of two tiles, or on a centre.
    fn any_place(&self, random: &mut Random) -> Location {
        let mut along = |count: usize| {
            let anywhere = random.next() * (count as f64 + 4.0) - 2.0;
            match random.below(6) {
                0 => (anywhere / 64.0).round() * 64.0 + random.next() * 4.0 - 2.0,
                1 => random.next() * 3.0 - 1.0,
                2 => anywhere.floor() + 0.5,
                3 => count as f64 - random.next() * 3.0 + 1.0,
                _ => anywhere,
            }
        };
        let (column, row) = (along(self.by_cell.columns), along(self.by_cell.rows));
        self.place(column, row)
    }

    fn compare(&self, location: Location, radius: f64) {
        let frame = LocalFrame::new(&self.projector, location).unwrap();
        let expected = match self.by_cell.ground(frame.origin()) {
            None => Err(Gap::Outside),
            Some((metres, ..)) if metres.is_nan() => Err(Gap::Void),
            Some(known) => Ok(known),
        };
        let found = self.dem.ground_at(location).unwrap().map(|ground| {
            let metres = ground.elevation.height().get::<meter>();
            (metres, ground.no_data_nearby, ground.at_rim)
        });
        assert_eq!(found, expected, "ground at {location:?}");

        let cell = self.dem.cell_size().get::<meter>();
        let expected = self.by_cell.grade(&frame, radius, cell);
        let radius = Length::new::<meter>(radius);
        let found = self.dem.grade_around(location, radius).unwrap().ok();
        let found = found.map(|grade| {
            (
                grade.lowest.height().get::<meter>(),
                grade.highest.height().get::<meter>(),
                grade.samples,
                grade.without_value,
            )
        });
        let (Some(found), Some(expected)) = (found, expected) else {
            assert_eq!(found, expected, "grade within {radius:?} of {location:?}");
            return;
        };
        assert_eq!((found.2, found.3), (expected.2, expected.3), "{location:?}");
        // Points of the rim are found by another sum, which rounds coordinates otherwise.
        for (found, expected) in [(found.0, expected.0), (found.1, expected.1)] {
            assert!(
                (found - expected).abs() < 1e-6,
                "{found} {expected} {location:?}"
            );
        }
    }
}

/// Degrees of a point of a system's plane.
fn degrees(projector: &Projector, x: f64, y: f64) -> Coord<f64> {
    if projector.target().is_geographic() {
        return Coord { x, y };
    }
    let mut found = Coord {
        x: -74.05,
        y: 40.74,
    };
    for _ in 0..30 {
        let here = Location::from_degrees(found.x, found.y).unwrap();
        let here = projector.project(here).unwrap();
        found.x += (x - here.x) / 84_000.0;
        found.y += (y - here.y) / 111_000.0;
    }
    found
}

/// Compares at many places, with radii from nothing to a few tens of cells.
fn agree(layout: &Layout<'_>, unit: LengthUnit) {
    let scratch = tempfile::tempdir().unwrap();
    let pair = Pair::new(scratch.path(), layout, unit);
    let cell = pair.dem.cell_size().get::<meter>();
    let mut random = Random::new(11);
    for _ in 0..1500 {
        let location = pair.any_place(&mut random);
        let radius = match random.below(4) {
            0 => cell * random.next(),
            1 => cell * random.below(12) as f64,
            2 => cell * 12.0 * random.next(),
            _ => cell * (1.0 + 40.0 * random.next() * random.next()),
        };
        pair.compare(location, radius);
    }
}

fn layout<'a>(kind: &'a str, options: &'a [&'a str]) -> Layout<'a> {
    Layout {
        kind,
        options,
        columns: 230,
        rows: 190,
        transform: NORTH_UP,
        crs: UTM,
        scale: 1.0,
        offset: 0.0,
    }
}

const TILES_OF_64: [&str; 3] = ["TILED=YES", "BLOCKXSIZE=64", "BLOCKYSIZE=64"];
const SMALL_TILES: [&str; 4] = [
    "TILED=YES",
    "BLOCKXSIZE=16",
    "BLOCKYSIZE=48",
    "COMPRESS=DEFLATE",
];

#[test]
fn tiles_of_single_precision() {
    agree(&layout("Float32", &TILES_OF_64), LengthUnit::Metre);
}

#[test]
fn strips() {
    let mut strips = layout("Float32", &["BLOCKYSIZE=3", "COMPRESS=DEFLATE"]);
    // Wide enough for bands of 100 rows.
    (strips.columns, strips.rows) = (5200, 130);
    let scratch = tempfile::tempdir().unwrap();
    let pair = Pair::new(scratch.path(), &strips, LengthUnit::Metre);
    let mut random = Random::new(5);
    for _ in 0..60 {
        pair.compare(pair.any_place(&mut random), 6.5);
    }
    for step in 0..100 {
        let place = pair.place(40.3 * f64::from(step), 92.0 + 0.13 * f64::from(step));
        pair.compare(place, 5.0);
    }
}

#[test]
fn double_precision_in_odd_blocks() {
    let odd = ["TILED=YES", "BLOCKXSIZE=80", "BLOCKYSIZE=112"];
    agree(&layout("Float64", &odd), LengthUnit::Metre);
}

#[test]
fn whole_feet() {
    agree(&layout("UInt16", &SMALL_TILES), LengthUnit::SurveyFoot);
    let mut scaled = layout("Int16", &TILES_OF_64);
    (scaled.scale, scaled.offset) = (0.1, 3.0);
    agree(&scaled, LengthUnit::Foot);
}

#[test]
fn a_scale_that_turns_heights_over() {
    let mut turned = layout("UInt16", &TILES_OF_64);
    (turned.scale, turned.offset) = (-0.3, 500.0);
    agree(&turned, LengthUnit::Metre);
}

#[test]
fn turned_and_skewed_grids() {
    let mut turned = layout("Float32", &TILES_OF_64);
    turned.transform = [580_050.0, 0.8, 0.6, 4_510_000.0, 0.6, -0.8];
    agree(&turned, LengthUnit::Metre);
    turned.transform = [580_050.0, -0.3, 1.7, 4_510_000.0, 0.9, 0.2];
    agree(&turned, LengthUnit::Metre);
}

#[test]
fn degrees_of_longitude_and_latitude() {
    let mut degrees = layout("Float32", &TILES_OF_64);
    degrees.crs = "EPSG:4269";
    degrees.transform = [-74.05, 1e-5, 0.0, 40.74, 0.0, -1e-5];
    agree(&degrees, LengthUnit::Metre);
}

#[test]
fn one_call_says_what_two_say() {
    let scratch = tempfile::tempdir().unwrap();
    let fine = Pair::new(
        scratch.path(),
        &layout("Float32", &TILES_OF_64),
        LengthUnit::Metre,
    );
    let mut coarse = layout("Float64", &[]);
    coarse.transform = [579_900.0, 3.0, 0.0, 4_510_100.0, 0.0, -3.0];
    let folder = tempfile::tempdir().unwrap();
    let coarse = Pair::new(folder.path(), &coarse, LengthUnit::Metre);
    let mut random = Random::new(3);
    let places: Vec<Location> = (0..400).map(|_| coarse.any_place(&mut random)).collect();
    let terrain = Terrain::new(vec![coarse.dem, fine.dem]);
    let radius = Length::new::<meter>(4.0);
    for place in places {
        let around = terrain.around(place, radius).unwrap();
        assert_eq!(around.ground, terrain.ground_at(place).unwrap());
        assert_eq!(around.grade, terrain.grade_around(place, radius).unwrap());
    }
}
