//! Which grids are here.

use super::*;

#[test]
fn the_report_says_which_grids_are_here() {
    let Some(folder) = copied(&["us_noaa_vertcone.tif"]) else {
        return;
    };
    let report = datums_in(folder.path())
        .grid_report(Ngvd29, Navd88)
        .unwrap();
    let mut files: Vec<(&str, bool)> = report
        .iter()
        .map(|grid| (grid.file.as_str(), grid.is_present()))
        .collect();
    files.sort_unstable();
    assert_eq!(
        files,
        [
            ("us_noaa_vertconc.tif", false),
            ("us_noaa_vertcone.tif", true),
            ("us_noaa_vertconw.tif", false),
        ]
    );
    for grid in &report {
        // EPSG 7969 to 7971.
        assert_abs_diff_eq!(
            grid.accuracy.unwrap().get::<millimeter>(),
            20.0,
            epsilon = 1e-9
        );
        assert!(grid.area.as_ref().is_some_and(|area| area.west < area.east));
        assert!(
            grid.address
                .as_ref()
                .is_some_and(|address| address.ends_with(&grid.file))
        );
    }
}

/// A folder with a `proj.db` of another version beside the grids, as distributions have it,
/// changes nothing.
#[test]
fn a_foreign_database_beside_the_grids_is_not_read() {
    let Some(folder) = copied(&["us_noaa_vertcone.tif"]) else {
        return;
    };
    fs::write(folder.path().join("proj.db"), b"not a database").unwrap();
    let converted = datums_in(folder.path())
        .convert(metres(0.0, Ngvd29), Navd88, place(-80.0, 40.0))
        .unwrap();
    assert_abs_diff_eq!(height(&converted), -0.15, epsilon = 1e-2);
}

#[test]
fn every_common_pair_is_known() {
    let datums = no_grids();
    for (from, to) in COMMON_DATUM_PAIRS {
        let report = datums.grid_report(from, to).unwrap();
        assert!(!report.is_empty(), "{from} to {to}");
        let obtainable = report.iter().any(|grid| grid.address.is_some());
        assert!(obtainable, "{from} to {to}: {report:?}");
    }
}
