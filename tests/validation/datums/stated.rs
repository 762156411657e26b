//! Offsets that the user states.

use super::*;

const REDWOOD_CITY: &str = "
        [[datum_offset]]
        offset = \"NGVD29 -> NAVD88 = +2.75 ft\"
        source = \"Redwood City memo, April 2008\"
    ";

fn redwood_city() -> Location {
    place(-122.23, 37.485)
}

/// D7: Redwood City memo, April 2008 (`WebLink` 41763, page 94): San Mateo County, NAVD88 =
/// NGVD29 + 2.75 ft; 10.00 ft is 12.75 ft.
#[test]
fn d7_redwood_city() {
    let empty = tempfile::tempdir().unwrap();
    let datums = with_offsets(empty.path(), REDWOOD_CITY).unwrap();
    let level = parse_elevation("10 ft NGVD29").unwrap();
    let converted = datums.convert(level, Navd88, redwood_city()).unwrap();
    assert_abs_diff_eq!(
        converted.elevation.height().get::<foot>(),
        12.75,
        epsilon = 1e-12
    );
    assert_eq!(converted.reference, "Redwood City memo, April 2008");
    assert_eq!(converted.grid_differs, None);
    let back = datums
        .convert(converted.elevation, Ngvd29, redwood_city())
        .unwrap();
    assert_abs_diff_eq!(back.elevation.height().get::<foot>(), 10.0, epsilon = 1e-12);
}

/// With VERTCON beside it, the stated offset still decides; one that is wrong by a foot
/// is told.
#[test]
fn grids_beside_it() {
    let Some(folder) = open_data("grids") else {
        return;
    };
    let level = parse_elevation("10 ft NGVD29").unwrap();
    let datums = with_offsets(&folder, REDWOOD_CITY).unwrap();
    let converted = datums.convert(level, Navd88, redwood_city()).unwrap();
    // VERTCON gives 2.7 ft there: within what a county's offset strays.
    assert_eq!(converted.grid_differs, None, "{converted:?}");
    let wrong = REDWOOD_CITY.replace("+2.75", "-2.75");
    let datums = with_offsets(&folder, &wrong).unwrap();
    let converted = datums.convert(level, Navd88, redwood_city()).unwrap();
    assert_abs_diff_eq!(converted.shift.get::<foot>(), -2.75, epsilon = 1e-12);
    let differs = converted.grid_differs.unwrap().get::<foot>();
    assert!((-5.6..-5.3).contains(&differs), "{differs}");
}

#[test]
fn tidal_datums_go_by_it_alone() {
    let Some(folder) = open_data("grids") else {
        return;
    };
    let level = parse_elevation("6 ft MLLW").unwrap();
    let error = with_offsets(&folder, "")
        .unwrap()
        .convert(level, Navd88, redwood_city())
        .unwrap_err();
    assert!(matches!(error, DatumError::Tidal { .. }), "{error}");
    assert!(
        error.to_string().contains("MLLW -> NAVD88 = -1.1 ft"),
        "{error}"
    );
    let offset = "
            [[datum_offset]]
            offset = \"NAVD88 -> MLLW = 0.2 ft\"
            source = \"the gauge's sheet\"
            standard_deviation = \"0.1 ft\"
        ";
    let datums = with_offsets(&folder, offset).unwrap();
    let converted = datums.convert(level, Navd88, redwood_city()).unwrap();
    assert_abs_diff_eq!(converted.shift.get::<foot>(), -0.2, epsilon = 1e-12);
    let sd = converted.standard_deviation.unwrap();
    assert_abs_diff_eq!(sd.get::<foot>(), 0.1, epsilon = 1e-12);
}

#[test]
fn two_of_one_pair_are_refused() {
    let empty = tempfile::tempdir().unwrap();
    let other = "
            [[datum_offset]]
            offset = \"NAVD88 -> NGVD29 = -2.6 ft\"
            source = \"another memo\"
        ";
    let error = with_offsets(empty.path(), &format!("{REDWOOD_CITY}{other}")).unwrap_err();
    assert!(matches!(error, DatumError::TwoOffsets { .. }), "{error}");
    assert!(error.to_string().contains("another memo"), "{error}");
}
