//! Vertical datums against published examples, the Ordnance Survey's test points and another
//! build of PROJ.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use VerticalDatum::{Dhhn2016, Egm96, Egm2008, Nap, Navd88, NgfIgn69, Ngvd29, Odn};
use approx::assert_abs_diff_eq;
use sillmark::crs::{Conversion, DatumError, DatumSettings, Datums, GRIDS_VARIABLE, StatedOffset};
use sillmark::quantity::unit::{Length, foot, meter, millimeter};
use sillmark::quantity::{Elevation, VerticalDatum, parse_elevation};
use sillmark::site::Location;
use sillmark::statement::Document;

use crate::peer;
use crate::support::open_data;

const ETRS89: u32 = 4937;
const RGF93_V2B: u32 = 9781;

fn datums_in(folder: &Path) -> Datums {
    Datums::new(DatumSettings {
        grid_folders: vec![folder.to_owned()],
        ..DatumSettings::default()
    })
    .unwrap()
}

/// With every grid of the open data.
fn datums() -> Option<Datums> {
    open_data("grids").map(|folder| datums_in(&folder))
}

/// With an empty folder, whatever the environment names.
fn no_grids() -> Datums {
    let folder = tempfile::tempdir().unwrap();
    datums_in(folder.path())
}

fn with_offsets(folder: &Path, offsets: &str) -> Result<Datums, DatumError> {
    let document = Document::parse("site.toml", offsets).unwrap();
    Datums::new(DatumSettings {
        grid_folders: vec![folder.to_owned()],
        network: false,
        stated_offsets: StatedOffset::read_all(&document.root()).unwrap(),
    })
}

fn place(longitude: f64, latitude: f64) -> Location {
    Location::from_degrees(longitude, latitude).unwrap()
}

fn metres(height: f64, datum: VerticalDatum) -> Elevation {
    Elevation::new(Length::new::<meter>(height), datum)
}

fn height(conversion: &Conversion) -> f64 {
    conversion.elevation.height().get::<meter>()
}

fn shift(conversion: &Conversion) -> f64 {
    conversion.shift.get::<meter>()
}

/// Only the files named, in a folder of their own.
fn copied(names: &[&str]) -> Option<tempfile::TempDir> {
    let folder = tempfile::tempdir().unwrap();
    for name in names {
        let source = open_data(&format!("grids/{name}"))?;
        fs::copy(source, folder.path().join(name)).unwrap();
    }
    Some(folder)
}

/// EPSG Dataset, method 9658 VERTCON, the example: 29d28m00.443s N, 98d28m49.346s W in the
/// central grid.
mod epsg_method_9658 {
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
        assert!(report.iter().all(|grid| grid.is_present()), "{report:?}");
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
        drop(band);
        copy.close().unwrap();
        let error = datums_in(folder.path())
            .convert(metres(10.0, Ngvd29), Navd88, san_antonio())
            .unwrap_err();
        assert!(matches!(error, DatumError::Absurd { .. }), "{error}");
        assert!(error.to_string().contains("would shift by 128."), "{error}");
    }
}

/// PROJ 9.6.2, test/unit/test_network.cpp, `curl_vgridshift_vertcon`: EPSG:4269+7968 to
/// EPSG:4269+5703 at 40 N, 80 W, 0 m gives −0.15 m within 1e-2.
#[test]
fn proj_unit_value_at_40_n_80_w() {
    let Some(datums) = datums() else { return };
    let converted = datums
        .convert(metres(0.0, Ngvd29), Navd88, place(-80.0, 40.0))
        .unwrap();
    assert_abs_diff_eq!(height(&converted), -0.15, epsilon = 1e-2);
    assert!(converted.how.contains("us_noaa_vertcone.tif"));
}

/// Ordnance Survey, OSTN15/OSGM15 test files: 40 points, ETRS89 to ODN, printed to the
/// millimetre. Nine of them, on islands, lie outside the area for which the dataset gives
/// OSGM15 as a way to ODN (EPSG 7711: 49.93 to 58.71 N, 7.06 W to 1.80 E); the grid file has
/// values there too, but they lead to the islands' own datums (flags other than 1).
#[test]
fn ordnance_survey_test_points() {
    let Some(datums) = datums() else { return };
    let read = |name: &str| {
        let path = open_data(&format!(
            "grids/checks/OSTN15_OSGM15_Test{name}_ETRStoOSGB.txt"
        ));
        fs::read_to_string(path.unwrap()).unwrap()
    };
    let (input, output) = (read("Input"), read("Output"));
    let (mut held, mut refused, mut worst) = (0, Vec::new(), 0.0_f64);
    for (input, output) in input.lines().zip(output.lines()).skip(1) {
        let input: Vec<&str> = input.split(',').collect();
        let output: Vec<&str> = output.split(',').collect();
        assert_eq!(input[0], output[0]);
        let number = |text: &str| text.trim().parse::<f64>().unwrap();
        let at = place(number(input[2]), number(input[1]));
        let ellipsoidal = Length::new::<meter>(number(input[3]));
        match datums.from_ellipsoid(ellipsoidal, ETRS89, Odn, at) {
            Ok(converted) => {
                let error = (height(&converted) - number(output[3])).abs();
                worst = worst.max(error);
                assert!(error <= 0.003, "{}: {error}", input[0]);
                held += 1;
            }
            Err(DatumError::Outside { .. }) => refused.push(input[0].to_owned()),
            Err(other) => panic!("{}: {other}", input[0]),
        }
    }
    eprintln!("Ordnance Survey: {held} points, worst {worst:.4} m, refused {refused:?}");
    assert_eq!(held, 31);
    assert_eq!(
        refused,
        [
            "TP01", "TP31", "TP32", "TP35", "TP36", "TP37", "TP38", "TP39", "TP40"
        ]
    );
}

/// Another build of PROJ (pyproj) at 2,000 random places, and for VERTCON a bilinear sum
/// without PROJ.
#[test]
fn the_peer_gives_the_same_millimetre() {
    let Some(folder) = open_data("grids") else {
        return;
    };
    let Some(lines) = peer::lines("datum_points.py", &folder, 2000) else {
        return;
    };
    let datums = datums_in(&folder);
    let mut counts: BTreeMap<String, (u32, u32, f64)> = BTreeMap::new();
    for line in &lines {
        let fields: Vec<&str> = line.split(';').collect();
        let number = |index: usize| fields[index].parse::<f64>().unwrap();
        let at = place(number(1), number(2));
        let length = Length::new::<meter>(number(3));
        let from_ellipsoid = |system, to| datums.from_ellipsoid(length, system, to, at);
        let converted = match fields[0] {
            "NGVD29-NAVD88" => datums.convert(Elevation::new(length, Ngvd29), Navd88, at),
            "ELLIPSOID-ODN" => from_ellipsoid(ETRS89, Odn),
            "ELLIPSOID-NAP" => from_ellipsoid(ETRS89, Nap),
            "ELLIPSOID-NGF" => from_ellipsoid(RGF93_V2B, NgfIgn69),
            other => panic!("{other}"),
        };
        let count = counts.entry(fields[0].to_owned()).or_default();
        match (&converted, fields[4]) {
            (Ok(converted), theirs) if theirs != "refused" => {
                let ours = converted.elevation.height().get::<meter>();
                let mut error = (ours - number(4)).abs();
                if fields[5] != "-" {
                    error = error.max((ours - number(5)).abs());
                }
                assert!(error < 1e-3, "{line}: {ours}");
                count.0 += 1;
                count.2 = count.2.max(error);
            }
            (Err(DatumError::Outside { .. }), "refused") => count.1 += 1,
            _ => panic!("{line}: {converted:?}"),
        }
    }
    for (name, (converted, refused, worst)) in &counts {
        eprintln!("{name}: {converted} converted, {refused} refused, worst {worst:.1e} m");
    }
    assert!(counts["NGVD29-NAVD88"].0 >= 250 && counts["ELLIPSOID-ODN"].0 >= 250);
}

mod without_a_grid {
    use super::*;

    #[test]
    fn the_error_names_the_file() {
        let datums = no_grids();
        for (longitude, latitude, file) in [
            (-80.0, 40.0, "us_noaa_vertcone.tif"),
            (-98.48, 29.47, "us_noaa_vertconc.tif"),
            (-122.23, 37.48, "us_noaa_vertconw.tif"),
        ] {
            let error = datums
                .convert(metres(3.0, Ngvd29), Navd88, place(longitude, latitude))
                .unwrap_err();
            let DatumError::MissingGrid { files, .. } = &error else {
                panic!("{error}");
            };
            assert_eq!(files.len(), 1, "{error}");
            assert_eq!(files[0].file, file);
            for part in [
                "NGVD29 to NAVD88",
                file,
                "SILLMARK_GRIDS",
                "NGVD29 -> NAVD88 = -1.1 ft",
            ] {
                assert!(error.to_string().contains(part), "{error}");
            }
        }
    }

    #[test]
    fn every_named_pair_is_an_error_that_names_files() {
        let datums = no_grids();
        for (from, to, at, file) in [
            (Navd88, Egm2008, place(-80.0, 40.0), "us_noaa_g2018u0.tif"),
            (Odn, Egm2008, place(-1.3, 52.0), "uk_os_OSGM15_GB.tif"),
            (Nap, Egm2008, place(5.0, 52.0), "nl_nsgi_nlgeo2018.tif"),
            (NgfIgn69, Egm2008, place(2.0, 48.0), "fr_ign_RAF20.tif"),
            (Dhhn2016, Egm2008, place(10.0, 51.0), "de_bkg_gcg2016.tif"),
            (Egm96, Egm2008, place(10.0, 51.0), "us_nga_egm96_15.tif"),
        ] {
            for (from, to) in [(from, to), (to, from)] {
                let error = datums.convert(metres(3.0, from), to, at).unwrap_err();
                let DatumError::MissingGrid { files, .. } = &error else {
                    panic!("{from} to {to}: {error}");
                };
                assert!(files.iter().any(|needed| needed.file == file), "{error}");
                assert!(
                    files
                        .iter()
                        .any(|needed| needed.file == "us_nga_egm08_25.tif"),
                    "{error}"
                );
            }
        }
    }

    #[test]
    fn a_grid_of_another_area_does_not_help() {
        let Some(folder) = copied(&["us_noaa_vertconw.tif"]) else {
            return;
        };
        let error = datums_in(folder.path())
            .convert(metres(3.0, Ngvd29), Navd88, place(-80.0, 40.0))
            .unwrap_err();
        assert!(
            error.to_string().contains("us_noaa_vertcone.tif"),
            "{error}"
        );
    }

    #[test]
    fn a_damaged_grid_is_no_shift() {
        let Some(folder) = copied(&["us_noaa_vertcone.tif"]) else {
            return;
        };
        let path = folder.path().join("us_noaa_vertcone.tif");
        let bytes = fs::read(&path).unwrap();
        for kept in [0, 100, bytes.len() / 2] {
            fs::write(&path, &bytes[..kept]).unwrap();
            let converted =
                datums_in(folder.path()).convert(metres(3.0, Ngvd29), Navd88, place(-67.5, 25.0));
            assert!(converted.is_err(), "{kept}: {converted:?}");
        }
    }

    #[test]
    fn outside_every_area_is_refused() {
        let Some(datums) = datums() else { return };
        for at in [place(-157.8, 21.3), place(-1.3, 52.0), place(-60.0, 40.0)] {
            let error = datums.convert(metres(3.0, Ngvd29), Navd88, at).unwrap_err();
            assert!(matches!(error, DatumError::Outside { .. }), "{error}");
        }
    }

    #[test]
    fn datums_that_no_transformation_joins() {
        let Some(datums) = datums() else { return };
        let error = datums
            .convert(metres(3.0, Ngvd29), Egm2008, place(-80.0, 40.0))
            .unwrap_err();
        assert!(matches!(error, DatumError::NoOperation { .. }), "{error}");
        let horizontal = VerticalDatum::Epsg(4326);
        let error = datums
            .convert(metres(3.0, horizontal), Navd88, place(-80.0, 40.0))
            .unwrap_err();
        assert!(
            matches!(error, DatumError::NotVertical { code: 4326 }),
            "{error}"
        );
    }

    #[test]
    fn the_network_and_a_folder_that_is_not_there() {
        let settings = DatumSettings {
            network: true,
            ..DatumSettings::default()
        };
        // The bundled PROJ is built without it.
        assert_eq!(Datums::new(settings).unwrap_err(), DatumError::NoNetwork);
        let settings = DatumSettings {
            grid_folders: vec![PathBuf::from("no/such/folder")],
            ..DatumSettings::default()
        };
        let error = Datums::new(settings).unwrap_err().to_string();
        assert!(
            error.contains("--grids: \"no/such/folder\" is not a folder"),
            "{error}"
        );
    }
}

/// Vertical systems known by their code alone.
mod any_epsg_code {
    use super::*;

    /// EPSG 9435 and others go by offsets and slopes without a grid; DHHN92 (5783) to DHHN2016
    /// over EVRF2007 is a few centimetres.
    #[test]
    fn without_a_grid_where_the_dataset_has_none() {
        let datums = no_grids();
        let dhhn92 = VerticalDatum::Epsg(5783);
        let converted = datums
            .convert(metres(3.0, dhhn92), Dhhn2016, place(10.0, 51.0))
            .unwrap();
        assert!(converted.how.contains("without a grid"), "{converted:?}");
        assert!(
            shift(&converted).abs() > 1e-4 && shift(&converted).abs() < 0.05,
            "{converted:?}"
        );
    }

    /// EPSG 5438: Caspian height = Baltic 1977 height + 28 m; EPSG 5440 the same between
    /// systems that count depths. An elevation counts upwards whatever its system does.
    #[test]
    fn depths_count_downwards() {
        let datums = no_grids();
        let baku = place(50.0, 40.4);
        for (baltic, caspian) in [(5705, 5611), (5612, 5706)] {
            let level = metres(-26.0, VerticalDatum::Epsg(baltic));
            let to = VerticalDatum::Epsg(caspian);
            let converted = datums.convert(level, to, baku).unwrap();
            assert_abs_diff_eq!(height(&converted), 2.0, epsilon = 1e-9);
        }
    }
}

/// Offsets that the user states.
mod stated {
    use super::*;

    const REDWOOD_CITY: &str = "
        [[datum_offset]]
        offset = \"NGVD29 -> NAVD88 = +2.75 ft\"
        source = \"Redwood City memo, April 2008\"
    ";

    fn redwood_city() -> Location {
        place(-122.23, 37.485)
    }

    /// D7: Redwood City memo, April 2008 (WebLink 41763, page 94): San Mateo County, NAVD88 =
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
}

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

/// The environment, in a process of its own: this test runs itself again.
#[test]
fn grids_by_environment() {
    const NAME: &str = "datums::grids_by_environment";
    const CHILD: &str = "SILLMARK_TEST_CHILD";
    if std::env::var_os(CHILD).is_some() {
        let datums = Datums::new(DatumSettings::default());
        let shifted = datums
            .and_then(|datums| datums.convert(metres(0.0, Ngvd29), Navd88, place(-80.0, 40.0)));
        match shifted {
            Ok(converted) => println!("<{:.2}>", height(&converted)),
            Err(error) => println!("<{error}>"),
        }
        return;
    }
    let Some(folder) = open_data("grids") else {
        return;
    };
    let empty = tempfile::tempdir().unwrap();
    let run = |variables: &[(&str, &Path)]| {
        let mut command = Command::new(std::env::current_exe().unwrap());
        command
            .args(["--exact", NAME, "--nocapture"])
            .env(CHILD, "1");
        for name in [GRIDS_VARIABLE, "PROJ_DATA", "PROJ_LIB"] {
            command.env_remove(name);
        }
        command.env("PROJ_USER_WRITABLE_DIRECTORY", empty.path());
        command.envs(variables.iter().copied());
        let output = command.output().unwrap();
        String::from_utf8(output.stdout).unwrap()
    };
    for name in [
        GRIDS_VARIABLE,
        "PROJ_DATA",
        "PROJ_LIB",
        "PROJ_USER_WRITABLE_DIRECTORY",
    ] {
        let said = run(&[(name, &folder)]);
        assert!(said.contains("<-0.15>"), "{name}: {said}");
    }
    let said = run(&[]);
    assert!(said.contains("needs us_noaa_vertcone.tif"), "{said}");
    // Our own variable wins.
    let said = run(&[(GRIDS_VARIABLE, empty.path()), ("PROJ_DATA", &folder)]);
    assert!(said.contains("needs us_noaa_vertcone.tif"), "{said}");
    let said = run(&[(GRIDS_VARIABLE, Path::new("no/such/folder"))]);
    assert!(
        said.contains("SILLMARK_GRIDS: \"no/such/folder\" is not a folder"),
        "{said}"
    );
}
