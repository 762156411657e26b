//! Places, and what is read about them: from the crop as from the whole file.

use geo::Coord;
use sillmark::site::Location;
use sillmark::terrain::{Dem, Gap, Terrain};

use super::fixture::{about, assert_window, collect, metres, metres_navd88, served, usual};
use crate::terrain::fixture::{metres as ground, place};

/// Whether two terrain models say the same about a place, to rounding.
fn assert_same(whole: &Dem, crop: &Dem, at: Location, radius: f64) {
    match (ground(whole, at), ground(crop, at)) {
        (Ok(one), Ok(other)) => assert!((one - other).abs() < 1e-9, "{one} or {other}"),
        (one, other) => assert_eq!(one, other),
    }
    let grade = |dem: &Dem| dem.grade_around(at, metres(radius)).unwrap();
    match (grade(whole), grade(crop)) {
        (Ok(one), Ok(other)) => {
            for (one, other) in [(one.lowest, other.lowest), (one.highest, other.highest)] {
                assert!((one.above(other).unwrap() / metres(1.0)).value.abs() < 1e-9);
            }
            assert_eq!(one.samples, other.samples);
            assert_eq!(one.without_value, other.without_value);
        }
        (one, other) => assert_eq!(one.is_err(), other.is_err()),
    }
    let rim = |dem: &Dem| {
        dem.ground_at(at)
            .unwrap()
            .map(|ground| (ground.at_rim, ground.no_data_nearby))
    };
    assert_eq!(rim(whole), rim(crop));
}

#[test]
fn what_is_read_about_a_place_is_what_the_whole_file_says() {
    let folder = tempfile::tempdir().unwrap();
    let path = usual(folder.path());
    let server = served(&path);
    let statement = metres_navd88();
    let whole = Dem::open(&path, &statement).unwrap();
    // On borders of tiles (640 m), in the outer half cell, at corners, just outside.
    let places = [
        (640.0, -640.0),
        (1279.9, -1300.0),
        (3500.0, -2600.0),
        (2.0, -2.0),
        (6998.0, -5298.0),
        (6998.0, -4.0),
        (5.0, -2650.0),
        (-20.0, -2650.0),
    ];
    for (east, north) in places {
        let site = place(east, north);
        for reach in [0.0, 25.0, 700.0] {
            let collected = collect(&server, &[site], reach, folder.path()).unwrap();
            let crop = collected.file;
            let Some(crop) = crop else {
                assert_eq!((east, reach), (-20.0, 0.0));
                continue;
            };
            assert_window(&path, &crop);
            let crop = Dem::open(&crop, &statement).unwrap();
            assert_same(&whole, &crop, site, reach);
        }
    }
}

#[test]
fn a_square_and_openings_farther_away_are_in_the_margin() {
    let folder = tempfile::tempdir().unwrap();
    let path = usual(folder.path());
    let server = served(&path);
    let site = place(3333.0, -2222.0);
    let reach = 500.0;
    let crop = collect(&server, &[site], reach, folder.path())
        .unwrap()
        .file
        .unwrap();
    let open = |path| Terrain::new(vec![Dem::open(path, &metres_navd88()).unwrap()]);
    let (whole, crop) = (open(&path), open(&crop));
    let steps = [-1.0, -0.7, -0.31, 0.0, 0.2, 0.55, 1.0];
    let square: Vec<_> = steps
        .iter()
        .flat_map(|x| {
            steps.map(|y| Coord {
                x: reach * x,
                y: reach * y,
            })
        })
        .collect();
    let spots = |terrain: &Terrain| terrain.spots_around(site, &square).unwrap();
    for (one, other) in spots(&whole).into_iter().zip(spots(&crop)) {
        let difference = one
            .unwrap()
            .elevation
            .above(other.unwrap().elevation)
            .unwrap();
        assert!((difference / metres(1.0)).value.abs() < 1e-9);
    }
}

#[test]
fn places_far_apart_ask_for_what_lies_about_each() {
    let folder = tempfile::tempdir().unwrap();
    let path = usual(folder.path());
    let server = served(&path);
    let places = [
        place(400.0, -400.0),
        place(6500.0, -5000.0),
        place(405.0, -401.0),
    ];
    let collected = collect(&server, &places, 100.0, folder.path()).unwrap();
    assert_eq!(collected.beyond, None);
    let crop = Dem::open(&collected.file.unwrap(), &metres_navd88()).unwrap();
    let whole = Dem::open(&path, &metres_navd88()).unwrap();
    for site in places {
        assert_same(&whole, &crop, site, 100.0);
    }
    // Between them nothing was read, and nothing is ground.
    assert_eq!(ground(&crop, place(3500.0, -2600.0)), Err(Gap::Void));
    let one = collect(&server, &places[..1], 100.0, folder.path()).unwrap();
    assert!(collected.bytes_read < 3 * one.bytes_read);
}

#[test]
fn a_place_outside_is_told_with_the_address() {
    let folder = tempfile::tempdir().unwrap();
    let server = served(&usual(folder.path()));
    let crops = tempfile::tempdir().unwrap();
    let far = place(90_000.0, -2600.0);
    let collected = collect(&server, &[far], 500.0, crops.path()).unwrap();
    assert_eq!(collected.file, None);
    let said = server.said(&collected.beyond.unwrap());
    let start = "ADDRESS: does not reach longitude ";
    assert!(said.starts_with(start), "{said}");
    // The whole file is told, not a part of it.
    assert!(said.contains("x 580000.000000 to 587000.000000, y 4504700.000000 to 4510000.000000"));
    assert_eq!(std::fs::read_dir(crops.path()).unwrap().count(), 0);
    // With another place inside, nothing is amiss.
    let both = [far, place(3500.0, -2600.0)];
    let collected = collect(&server, &both, 100.0, crops.path()).unwrap();
    assert!(collected.file.is_some() && collected.beyond.is_none());
    let none = collect(&server, &[], 100.0, crops.path()).unwrap();
    assert!(none.file.is_none() && none.beyond.is_none());
}

#[test]
fn what_the_file_does_not_state_is_asked_for_before_anything_is_fetched() {
    let folder = tempfile::tempdir().unwrap();
    let server = served(&usual(folder.path()));
    let address = server.address();
    let limits = super::fixture::limits();
    let answers = sillmark::service::Answers::Fetched;
    let connection = sillmark::service::Connection::open(&address, answers, limits).unwrap();
    let error = sillmark::collect::terrain(
        &connection,
        &address,
        &sillmark::terrain::DemStatement::default(),
        &about(&[place(3500.0, -2600.0)], metres(100.0)),
        folder.path(),
    );
    let said = server.said(&error.unwrap_err());
    let start = "ADDRESS: does not state its vertical unit; state it with --dem-unit";
    assert!(said.starts_with(start), "{said}");
    assert_eq!(server.seen().len(), 1);
}
