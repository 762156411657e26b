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

#[test]
fn frames_between_the_lattice_are_those_measured_at_the_place() {
    // EPSG:3035 puts northing first, EPSG:3031 lies around the south pole, EPSG:3460 crosses
    // the antimeridian.
    let cases = [
        ("EPSG:4269", [-170.0, -50.0], [15.0, 83.0]),
        ("EPSG:4326", [-180.0, 180.0], [-90.0, 90.0]),
        ("EPSG:26918", [-78.0, -72.0], [20.0, 84.0]),
        ("EPSG:2263", [-75.0, -72.0], [40.0, 41.5]),
        ("EPSG:3857", [-180.0, 180.0], [-84.0, 84.0]),
        ("EPSG:3035", [-10.0, 30.0], [35.0, 70.0]),
        ("EPSG:3031", [-180.0, 180.0], [-90.0, -60.0]),
        ("EPSG:27700", [-6.0, 1.5], [50.0, 58.0]),
        ("EPSG:3460", [177.0, 183.0], [-20.0, -12.0]),
    ];
    for (definition, longitudes, latitudes) in cases {
        let projector = projector(definition).unwrap();
        let mut compared = 0;
        for step in 0..200_u32 {
            // The golden ratio and the square root of two spread the places evenly.
            let share = |factor: f64| (f64::from(step) * factor).fract();
            let longitude = longitudes[0] + (longitudes[1] - longitudes[0]) * share(0.618_034);
            let latitude = latitudes[0] + (latitudes[1] - latitudes[0]) * share(0.414_214);
            let longitude = if longitude > 180.0 {
                longitude - 360.0
            } else {
                longitude
            };
            let location = Location::from_degrees(longitude, latitude).unwrap();
            let frame = LocalFrame::new(&projector, location);
            let measured = LocalFrame::measured(&projector, location);
            let (Ok(frame), Ok(measured)) = (&frame, &measured) else {
                assert_eq!(frame, measured, "{definition} {location:?}");
                continue;
            };
            compared += 1;
            assert_eq!(frame.origin(), measured.origin());
            for (east, north) in [(1000.0, 0.0), (0.0, 1000.0)] {
                let there = measured.metres(frame.at(east, north));
                let off = (there.x - east).hypot(there.y - north);
                assert!(off < 2e-4, "{definition} {location:?}: {off} m in 1 km");
            }
        }
        assert!(compared > 50, "{definition}: {compared}");
    }
}

#[test]
fn a_frame_does_not_depend_on_what_was_asked_before() {
    let ask = |order: Vec<u32>| {
        let projector = projector("EPSG:26918").unwrap();
        let mut frames: Vec<_> = order
            .into_iter()
            .map(|step| {
                let longitude = -75.0 + 0.0007 * f64::from(step);
                let location = Location::from_degrees(longitude, 40.0 + 0.3 * longitude.fract());
                (
                    step,
                    LocalFrame::new(&projector, location.unwrap()).unwrap(),
                )
            })
            .collect();
        frames.sort_by_key(|(step, _)| *step);
        frames
    };
    let forwards = std::thread::spawn(move || ask((0..2000).collect()));
    let backwards = std::thread::spawn(move || ask((0..2000).rev().collect()));
    assert_eq!(forwards.join().unwrap(), backwards.join().unwrap());
}

#[test]
fn a_guess_is_refused_however_many_places_were_asked() {
    // The first places of a thread are looked at one by one, later ones by areas.
    let mut guesses = 0;
    let definitions = [
        "EPSG:27700",
        "EPSG:4269",
        "EPSG:26918",
        "EPSG:31370",
        "EPSG:4267",
    ];
    for definition in definitions {
        let answers = |range: std::ops::Range<u32>, warm: u32| {
            std::thread::spawn(move || {
                let projector = projector(definition).unwrap();
                for step in 0..warm {
                    let longitude = -0.12 + 1e-4 * f64::from(step);
                    let _ = projector.project(Location::from_degrees(longitude, 51.5).unwrap());
                }
                let answer = |step: u32| {
                    let share = |factor: f64| (f64::from(step) * factor).fract();
                    let (longitude, latitude) = (
                        360.0 * share(0.618_034) - 180.0,
                        170.0 * share(0.414_214) - 85.0,
                    );
                    projector.project(Location::from_degrees(longitude, latitude).unwrap())
                };
                range.map(answer).collect::<Vec<_>>()
            })
            .join()
            .unwrap()
        };
        let mut one_by_one = Vec::new();
        for start in [0, 200, 400, 600] {
            one_by_one.extend(answers(start..start + 200, 0));
        }
        let by_areas = answers(0..800, 1000);
        assert_eq!(one_by_one, by_areas, "{definition}");
        let guess = |answer: &&Result<_, _>| matches!(answer, Err(CrsError::Guess { .. }));
        guesses += by_areas.iter().filter(guess).count();
    }
    assert!(guesses > 500, "{guesses}");
}

#[test]
fn coordinates_become_places() {
    // EPSG Guidance Note 7-2: Lambert Azimuthal Equal Area, ETRS89 / LAEA Europe; Popular
    // Visualisation Pseudo Mercator, WGS 84 (the worked examples of both methods, from memory).
    let cases = [
        ("EPSG:3035", (3_962_799.45, 2_999_718.85), (5.0, 50.0)),
        (
            "EPSG:3857",
            (-11_169_055.58, 2_800_000.0),
            (-100.0 - 20.0 / 60.0, 24.0 + 22.0 / 60.0 + 54.433 / 3600.0),
        ),
    ];
    for (definition, (x, y), (longitude, latitude)) in cases {
        let place = projector(definition).unwrap().location(x, y).unwrap();
        assert_abs_diff_eq!(place.longitude(), longitude, epsilon = 2e-7);
        assert_abs_diff_eq!(place.latitude(), latitude, epsilon = 2e-7);
    }
    // Degrees of WGS 84 are taken as they are, x first whatever the authority says.
    for definition in ["EPSG:4326", "OGC:CRS84"] {
        let place = projector(definition)
            .unwrap()
            .location(-74.0335, 40.74)
            .unwrap();
        assert_eq!(place, hoboken());
    }
}

#[test]
fn there_and_back_is_the_same_place() {
    let cases = [
        ("EPSG:4269", -74.0335, 40.74),
        ("EPSG:2263", -74.0335, 40.74),
        ("EPSG:26918", -74.0335, 40.74),
        ("EPSG:4267", -90.1, 30.0),
        ("EPSG:26715", -93.2, 44.9),
        ("EPSG:27700", -0.1276, 51.5072),
        ("EPSG:31370", 4.35, 50.85),
        ("EPSG:28992", 5.387, 52.155),
    ];
    for (definition, longitude, latitude) in cases {
        let projector = projector(definition).unwrap();
        let location = Location::from_degrees(longitude, latitude).unwrap();
        let point = projector.project(location).unwrap();
        let back = projector.location(point.x, point.y).unwrap();
        assert_abs_diff_eq!(back.longitude(), longitude, epsilon = 2e-9);
        assert_abs_diff_eq!(back.latitude(), latitude, epsilon = 2e-9);
    }
}

#[test]
fn coordinates_that_are_no_place_are_refused() {
    // Easting and northing in degrees, degrees beyond a turn, infinity, New Jersey in Britain.
    let nowhere = [
        ("EPSG:4326", -74.0, 95.0),
        ("EPSG:4326", 286.0, 40.0),
        ("EPSG:4269", f64::NAN, 40.0),
        ("EPSG:32618", f64::INFINITY, 4_500_000.0),
        ("EPSG:32618", 5e8, 4_500_000.0),
    ];
    for (definition, x, y) in nowhere {
        let error = projector(definition).unwrap().location(x, y);
        assert!(
            matches!(error, Err(CrsError::NoPlace { .. })),
            "{definition} {x} {y}: {error:?}"
        );
    }
    let far = projector("EPSG:27700")
        .unwrap()
        .location(-4_900_000.0, 900_000.0);
    assert!(far.is_err(), "{far:?}");
}
