//! Reading a part of a layer.

use serde_json::json;
use sillmark::crs::{CrsDefinition, Projector};
use sillmark::hazard::{Part, ZoneStatement, read_zones};
use sillmark::quantity::{Length, unit::meter};
use sillmark::site::Location;

use super::fixture::{feature, polygon};

const COLUMNS: u8 = 31;
const ROWS: u8 = 21;

/// Squares of twenty metres at whole degrees from 0 E 40 N to 30 E 60 N, on a map whose
/// parallels are circles. Their names are their degrees.
fn squares(folder: &std::path::Path, code: u32) -> std::path::PathBuf {
    let system = CrsDefinition::from_text(&format!("EPSG:{code}")).unwrap();
    let projector = Projector::new(system.horizontal).unwrap();
    let mut features = Vec::new();
    for east in 0..COLUMNS {
        for north in 0..ROWS {
            let (longitude, latitude) = (f64::from(east), 40.0 + f64::from(north));
            let place = Location::from_degrees(longitude, latitude).unwrap();
            let Ok(at) = projector.project(place) else {
                continue;
            };
            let ring = [
                (-10.0, -10.0),
                (10.0, -10.0),
                (10.0, 10.0),
                (-10.0, 10.0),
                (-10.0, -10.0),
            ];
            let ring = ring.map(|(x, y)| [at.x + x, at.y + y]).to_vec();
            let attributes =
                json!({"FLD_ZONE": "AE", "FLD_AR_ID": format!("{longitude} {latitude}")});
            features.push(feature(&attributes, &polygon(&[ring])));
        }
    }
    let collection = json!({
        "type": "FeatureCollection",
        "crs": {"type": "name", "properties": {"name": format!("urn:ogc:def:crs:EPSG::{code}")}},
        "features": features,
    });
    crate::support::write(folder, "zones.geojson", &collection.to_string())
}

fn names(path: &std::path::Path, part: Option<Part>) -> Vec<String> {
    let map = read_zones(path, None, &ZoneStatement::default(), part).unwrap();
    map.zones().map(|(zone, _)| zone.feature.clone()).collect()
}

fn degrees_box(west: f64, south: f64, east: f64, north: f64) -> Part {
    Part::Box {
        south_west: Location::from_degrees(west, south).unwrap(),
        north_east: Location::from_degrees(east, north).unwrap(),
        margin: Length::new::<meter>(50.0),
    }
}

#[test]
fn a_box_of_degrees_holds_all_that_lies_in_it() {
    let scratch = tempfile::tempdir().unwrap();
    let path = squares(scratch.path(), 3035);
    let whole = names(&path, None).len();
    assert_eq!(whole, usize::from(COLUMNS) * usize::from(ROWS));
    for (west, south, east, north) in [
        (2.0, 44.0, 18.0, 50.0),
        (0.0, 58.0, 30.0, 60.0),
        (7.0, 51.0, 7.0, 51.0),
    ] {
        let read = names(&path, Some(degrees_box(west, south, east, north)));
        assert!(read.len() < whole / 2, "{} of {whole}", read.len());
        for column in 0..COLUMNS {
            for row in 0..ROWS {
                let (longitude, latitude) = (f64::from(column), 40.0 + f64::from(row));
                if (west..=east).contains(&longitude) && (south..=north).contains(&latitude) {
                    let name = format!("{longitude} {latitude}");
                    assert!(read.contains(&name), "{name} is missing");
                }
            }
        }
    }
}

#[test]
fn the_margin_is_around_the_box() {
    let scratch = tempfile::tempdir().unwrap();
    let path = squares(scratch.path(), 3035);
    let empty = degrees_box(7.1, 51.1, 7.9, 51.9);
    assert!(names(&path, Some(empty)).is_empty());
    // A tenth of a degree is 11.1 km to the north and 7.0 km to the east.
    let Part::Box {
        south_west,
        north_east,
        ..
    } = empty
    else {
        panic!();
    };
    let wider = Part::Box {
        south_west,
        north_east,
        margin: Length::new::<meter>(12_000.0),
    };
    let mut read = names(&path, Some(wider));
    read.sort();
    assert_eq!(read, ["7 51", "7 52", "8 51", "8 52"]);
}

#[test]
fn a_box_that_the_system_cannot_express_reads_everything() {
    let scratch = tempfile::tempdir().unwrap();
    // Britain's grid, and a box that reaches far beyond it.
    let path = squares(scratch.path(), 27700);
    let whole = names(&path, None);
    assert_eq!(
        names(&path, Some(degrees_box(0.0, 50.0, 30.0, 60.0))),
        whole
    );
    let path = squares(scratch.path(), 3035);
    let across = degrees_box(20.0, 50.0, 10.0, 55.0);
    assert_eq!(names(&path, Some(across)), names(&path, None));
}
