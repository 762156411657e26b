//! No grid, no shift: an error that names the file.

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
