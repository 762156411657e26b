//! The kept files of the demonstration against the program that makes them.

use std::path::Path;
use std::process::Command;

use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement};

fn kept(name: &str) -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("examples/alder-lock")
        .join(name)
}

/// The example program stands beside the test binary's folder.
fn make(folder: &Path) {
    let own = std::env::current_exe().unwrap();
    let program = own
        .parent()
        .unwrap()
        .parent()
        .unwrap()
        .join("examples/make_alder_lock");
    let status = Command::new(program).arg(folder).status().unwrap();
    assert!(status.success());
}

#[test]
fn the_files_are_what_the_program_makes() {
    let folder = tempfile::tempdir().unwrap();
    make(folder.path());
    let text = |path: &Path| std::fs::read_to_string(path).unwrap();
    for name in ["zones.geojson", "buildings.csv"] {
        assert_eq!(text(&folder.path().join(name)), text(&kept(name)), "{name}");
    }

    let statement = DemStatement::default();
    let (made, kept) = (folder.path().join("terrain.tif"), kept("terrain.tif"));
    let (made, kept) = (
        Dem::open(&made, &statement).unwrap(),
        Dem::open(&kept, &statement).unwrap(),
    );
    let middle = Location::from_degrees(-87.498_762, 47.799_353).unwrap();
    for (east, north) in [
        (0.0, 0.0),
        (0.02e-2, 0.03e-2),
        (-0.05e-2, 0.08e-2),
        (0.08e-2, -0.05e-2),
    ] {
        let place =
            Location::from_degrees(middle.longitude() + east, middle.latitude() + north).unwrap();
        assert_eq!(
            made.ground_at(place).unwrap(),
            kept.ground_at(place).unwrap()
        );
    }
}
