//! The site as a `GeoPackage`, read back.

use std::path::Path;

use sillmark::crs::DatumSettings;
use sillmark::gis::{FeatureReader, GisError, open_vector};
use sillmark::report::write_site_layers;

use crate::surroundings::fixture::{look, site, sources};

/// Every feature of a layer: its attributes by name, those that are missing left out.
fn read(path: &Path, layer: &str) -> Vec<Vec<(String, String)>> {
    let file = open_vector(path).unwrap();
    let reader = FeatureReader::new(&file, path, layer).unwrap();
    let crs = reader.spatial_ref().unwrap();
    assert_eq!(crs.auth_code().unwrap(), 4326);
    let names = reader.attributes().to_vec();
    let mut rows = Vec::new();
    reader
        .read(|record| {
            let values = names.iter().enumerate();
            let values = values
                .filter_map(|(index, name)| Some((name.clone(), record.value(index).text()?)));
            rows.push(values.collect());
            Ok::<(), GisError>(())
        })
        .unwrap();
    rows
}

fn value<'row>(row: &'row [(String, String)], name: &str) -> &'row str {
    let found = row.iter().find(|(known, _)| known == name);
    found.map_or("", |(_, value)| value)
}

const MORE: &str = "[[flood_level]]\nevent = \"1%\"\nlevel = \"9.5 m NAVD88\"\nsource = \"study\"\n\
    [[opening]]\nid = \"=cmd()\"\nwidth = \"1 m\"\nsill = \"8 m NAVD88\"\n\
    location = { longitude = -74.0005, latitude = 40.7003 }\n";

fn write(path: &Path) {
    let place = sillmark::site::Location::from_degrees(-74.0, 40.7).unwrap();
    let site = site(place, MORE);
    look(
        &site,
        &sources(DatumSettings::default()),
        |assessment, around| {
            write_site_layers(path, assessment, around).unwrap();
        },
    );
}

#[test]
fn the_site_and_its_openings_are_points() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("site.gpkg");
    write(&path);
    let rows = read(&path, "points");
    let told: Vec<[&str; 6]> = rows
        .iter()
        .map(|row| {
            [
                "kind",
                "id",
                "opening",
                "longitude",
                "flood_level_m",
                "depth_m",
            ]
            .map(|name| value(row, name))
        })
        .collect();
    // As it was written: a map is no spreadsheet.
    assert_eq!(
        told,
        [
            ["site", "Reed House", "", "-74", "9.5", ""],
            ["opening", "Reed House", "=cmd()", "-74.0005", "9.5", "1.5"],
            ["opening", "Reed House", "door", "-74", "9.5", "0.5"],
        ]
    );
    // The worst of the openings.
    assert_eq!(value(&rows[0], "vertical_datum"), "NAVD88");
    let verdicts: Vec<&str> = rows.iter().map(|row| value(row, "verdict")).collect();
    assert!(verdicts[1..].contains(&verdicts[0]), "{verdicts:?}");
}

#[test]
fn layers_without_features_are_there() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("site.gpkg");
    write(&path);
    for layer in ["zones", "lines"] {
        assert!(read(&path, layer).is_empty());
    }
}

#[test]
fn the_same_site_gives_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let [one, other] = ["one.gpkg", "other.gpkg"].map(|name| {
        let path = folder.path().join(name);
        write(&path);
        std::fs::read(path).unwrap()
    });
    assert!(one == other);
}

#[test]
fn a_folder_that_is_not_there_is_named() {
    let place = sillmark::site::Location::from_degrees(-74.0, 40.7).unwrap();
    let path = Path::new("no/such/folder/site.gpkg");
    let site = site(place, "");
    look(
        &site,
        &sources(DatumSettings::default()),
        |assessment, around| {
            let error = write_site_layers(path, assessment, around).unwrap_err();
            assert!(
                error.to_string().contains("no/such/folder/site.gpkg"),
                "{error}"
            );
        },
    );
}

#[test]
fn the_code_of_a_caution_stands_once() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("site.gpkg");
    let place = sillmark::site::Location::from_degrees(-74.0, 40.7).unwrap();
    // Two barriers in walls of which nothing is known: a caution for each.
    let more = MORE
        .replace("9.5 m", "10 m")
        .replace("location", "face = \"8 in\"\nlocation");
    let site = site(place, &more);
    look(
        &site,
        &sources(DatumSettings::default()),
        |assessment, around| {
            write_site_layers(&path, assessment, around).unwrap();
        },
    );
    let rows = read(&path, "points");
    let codes: Vec<&str> = value(&rows[0], "cautions").split(' ').collect();
    let times = codes.iter().filter(|code| **code == "wall-not-stated");
    assert_eq!(times.count(), 1, "{codes:?}");
}
