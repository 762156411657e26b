//! One axis order, and no guesses.

use approx::assert_abs_diff_eq;
use sillmark::crs::{CrsDefinition, CrsError, LocalFrame, Projector};
use sillmark::quantity::{Length, unit::meter};
use sillmark::site::Location;

fn projector(definition: &str) -> Result<Projector, CrsError> {
    Projector::new(CrsDefinition::from_text(definition)?.horizontal)
}

fn hoboken() -> Location {
    Location::from_degrees(-74.0335, 40.74).unwrap()
}

#[test]
fn degrees_stay_longitude_first() {
    // NAD83 and WGS 84 are one by EPSG operation 1188, to its 4 m.
    for geographic in ["EPSG:4326", "EPSG:4269", "EPSG:6318", "OGC:CRS84"] {
        let place = projector(geographic).unwrap().project(hoboken()).unwrap();
        assert_abs_diff_eq!(place.x, -74.0335, epsilon = 1e-9);
        assert_abs_diff_eq!(place.y, 40.74, epsilon = 1e-9);
    }
}

#[test]
fn northing_first_systems_give_easting_first() {
    // ETRS89-extended / LAEA Europe: origin 52 N 10 E at 4321000 E, 3210000 N (EPSG 3035).
    let origin = Location::from_degrees(10.0, 52.0).unwrap();
    let place = projector("EPSG:3035").unwrap().project(origin).unwrap();
    assert_abs_diff_eq!(place.x, 4_321_000.0, epsilon = 1e-3);
    assert_abs_diff_eq!(place.y, 3_210_000.0, epsilon = 1e-3);
}

#[test]
fn a_datum_that_is_not_known_is_refused() {
    let error = projector("+proj=longlat +a=6376428 +rf=311.5 +no_defs").map(|_| ());
    assert!(
        matches!(error, Err(CrsError::NoTransformation { .. })),
        "{error:?}"
    );
    // Known in Britain; elsewhere PROJ would ignore the datum.
    let error = projector("EPSG:27700").unwrap().project(hoboken());
    assert!(matches!(error, Err(CrsError::Guess { .. })), "{error:?}");
}

#[test]
fn a_metre_is_a_metre_in_every_system() {
    // A step of one kilometre measured back on the ellipsoid. Web Mercator stretches by
    // 1/cos(latitude), a third here.
    for definition in ["EPSG:4269", "EPSG:2263", "EPSG:26918", "EPSG:3857"] {
        let projector = projector(definition).unwrap();
        let frame = LocalFrame::new(&projector, hoboken()).unwrap();
        // One kilometre north is 1000 / 111 049.0 degrees at 40.74 N (meridian radius of
        // the WGS 84 ellipsoid there 6 362 637 m).
        let north = Location::from_degrees(-74.0335, 40.74 + 1000.0 / 111_049.0).unwrap();
        let moved = frame.metres(projector.project(north).unwrap());
        assert_abs_diff_eq!(moved.x, 0.0, epsilon = 0.2);
        assert_abs_diff_eq!(moved.y, 1000.0, epsilon = 0.3);
        let there = frame.metres(frame.at(30.0, -40.0));
        assert_abs_diff_eq!(there.x, 30.0, epsilon = 1e-6);
        assert_abs_diff_eq!(there.y, -40.0, epsilon = 1e-6);
        let area = frame.box_around(Length::new::<meter>(50.0));
        for point in [
            frame.at(50.0, 0.0),
            frame.at(-35.0, 35.0),
            frame.at(0.0, -50.0),
        ] {
            assert!(area.min().x < point.x && point.x < area.max().x);
            assert!(area.min().y < point.y && point.y < area.max().y);
        }
    }
}

#[test]
fn a_frame_at_the_antimeridian_and_near_the_pole() {
    let projector = projector("EPSG:4326").unwrap();
    for (longitude, latitude) in [(180.0, 0.0), (-180.0, 65.0), (12.0, 89.9), (0.0, -89.9)] {
        let location = Location::from_degrees(longitude, latitude).unwrap();
        let frame = LocalFrame::new(&projector, location).unwrap();
        let moved = frame.at(0.0, 1.0) - frame.origin();
        assert!(moved.y > 8.9e-6 && moved.y < 9.1e-6, "{moved:?}");
    }
}
