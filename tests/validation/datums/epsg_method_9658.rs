//! EPSG Dataset, method 9658 VERTCON, the example: 29d28m00.443s N, 98d28m49.346s W in the
//! central grid.

use super::*;

fn degrees(whole: f64, minutes: f64, seconds: f64) -> f64 {
    whole + minutes / 60.0 + seconds / 3600.0
}

fn san_antonio() -> Location {
    place(-degrees(98.0, 28.0, 49.346), degrees(29.0, 28.0, 0.443))
}

#[test]
fn d1_d2_the_place() {
    assert_abs_diff_eq!(san_antonio().latitude(), 29.466_789_7, epsilon = 1e-7);
    assert_abs_diff_eq!(san_antonio().longitude(), -98.480_373_9, epsilon = 1e-7);
}

#[test]
fn d3_the_offset_from_four_nodes() {
    let Some(datums) = datums() else { return };
    // The nodes around: 0.144, 0.132, 0.121 and 0.125 m; offset 0.129 m.
    let nodes = [
        (-98.50, 29.50, 0.144),
        (-98.45, 29.50, 0.132),
        (-98.45, 29.45, 0.121),
        (-98.50, 29.45, 0.125),
    ];
    for (longitude, latitude, node) in nodes {
        let at = place(longitude, latitude);
        let converted = datums.convert(metres(0.0, Ngvd29), Navd88, at).unwrap();
        assert_abs_diff_eq!(shift(&converted), node, epsilon = 5e-4);
    }
    let converted = datums
        .convert(metres(247.47, Ngvd29), Navd88, san_antonio())
        .unwrap();
    assert_abs_diff_eq!(shift(&converted), 0.129, epsilon = 5e-4);
    assert_abs_diff_eq!(shift(&converted), 0.128_756, epsilon = 5e-4);
}

#[test]
fn d4_the_height_on_navd88() {
    let Some(datums) = datums() else { return };
    let converted = datums
        .convert(metres(247.47, Ngvd29), Navd88, san_antonio())
        .unwrap();
    assert_abs_diff_eq!(height(&converted), 247.599, epsilon = 1e-3);
    assert_eq!(converted.elevation.datum(), Navd88);
    assert!(
        converted.how.contains("us_noaa_vertconc.tif"),
        "{converted:?}"
    );
    // EPSG 7970: accuracy 0.02 m.
    let sd = converted.standard_deviation.unwrap();
    assert_abs_diff_eq!(sd.get::<meter>(), 0.02, epsilon = 1e-12);
    let back = datums
        .convert(converted.elevation, Ngvd29, san_antonio())
        .unwrap();
    assert_abs_diff_eq!(height(&back), 247.47, epsilon = 1e-6);
}

/// D6: 247.47 m is 811.9 ft; traps: an elevation in feet, whatever its foot, goes through
/// metres, where a target in feet would silently not be shifted.
#[test]
fn d6_in_feet() {
    let Some(datums) = datums() else { return };
    assert_abs_diff_eq!(
        metres(247.47, Ngvd29).height().get::<foot>(),
        811.9,
        epsilon = 0.05
    );
    let (us, international) = ("247.47 ftUS EPSG:5702", "247.47 ft NGVD29");
    for (text, expected) in [(us, 75.5578), (international, 75.5576)] {
        let elevation = parse_elevation(text).unwrap();
        for target in ["EPSG:5703", "EPSG:6360", "EPSG:8228"] {
            let to = target.parse().unwrap();
            let converted = datums.convert(elevation, to, san_antonio()).unwrap();
            assert_abs_diff_eq!(height(&converted), expected, epsilon = 1e-4);
        }
    }
}

/// VERTCON's .tif files are in metres, its older .gtx files in millimetres, which PROJ
/// would read as metres: they do not count, and the error names the file that does.
#[test]
fn grids_in_millimetres_do_not_count() {
    let Some(old) = copied(&["vertconc.gtx", "vertcone.gtx", "vertconw.gtx"]) else {
        return;
    };
    let error = datums_in(old.path())
        .convert(metres(10.0, Ngvd29), Navd88, san_antonio())
        .unwrap_err();
    assert!(matches!(error, DatumError::MissingGrid { .. }), "{error}");
    assert!(
        error.to_string().contains("us_noaa_vertconc.tif"),
        "{error}"
    );
    // Both in one folder: the metres are read.
    let Some(datums) = datums() else { return };
    let report = datums.grid_report(Ngvd29, Navd88).unwrap();
    assert!(
        report.iter().all(sillmark::crs::GridStatus::is_present),
        "{report:?}"
    );
}

/// Millimetres in a file of the right name and format.
#[test]
fn a_shift_that_cannot_be_is_refused() {
    let Some(source) = open_data("grids/us_noaa_vertconc.tif") else {
        return;
    };
    let folder = tempfile::tempdir().unwrap();
    let target = folder.path().join("us_noaa_vertconc.tif");
    sillmark::gis::start();
    let source = gdal::Dataset::open(source).unwrap();
    let driver = gdal::DriverManager::get_driver_by_name("GTiff").unwrap();
    let copy = source
        .create_copy(
            &driver,
            &target,
            &gdal::raster::RasterCreationOptions::default(),
        )
        .unwrap();
    let mut band = copy.rasterband(1).unwrap();
    let mut nodes = band.read_band_as::<f32>().unwrap();
    nodes.data_mut().iter_mut().for_each(|node| *node *= 1000.0);
    band.write((0, 0), nodes.shape(), &mut nodes).unwrap();
    copy.close().unwrap();
    let error = datums_in(folder.path())
        .convert(metres(10.0, Ngvd29), Navd88, san_antonio())
        .unwrap_err();
    assert!(matches!(error, DatumError::Absurd { .. }), "{error}");
    assert!(error.to_string().contains("would shift by 128."), "{error}");
}
