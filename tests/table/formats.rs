//! Out into every format and in again.

use std::path::{Path, PathBuf};

use sillmark::crs::CrsDefinition;
use sillmark::table::{ColumnKind, OutColumn, Points, TableFormat, TableReader, convert};

use super::{csv, rest_of, rows_in};

pub(super) fn columns() -> Vec<OutColumn> {
    [
        ("id", ColumnKind::Text),
        ("x", ColumnKind::Number),
        ("y", ColumnKind::Number),
        ("depth_m", ColumnKind::Number),
        ("planks", ColumnKind::Whole),
    ]
    .map(|(name, kind)| OutColumn {
        name: name.to_owned(),
        kind,
    })
    .to_vec()
}

pub(super) fn points(crs: &str) -> Points {
    Points {
        x: 1,
        y: 2,
        crs: CrsDefinition::from_text(crs).unwrap().horizontal,
    }
}

/// Every kind of value, missing ones with them.
pub(super) const WORK: &str = "id,x,y,depth_m,planks\n\
    \"Gate, \"\"old\"\"\",-74.0335,40.74,0.1,9007199254740993\n\
    Überweg,-74.1,40.75,1e-7,\n\
    007,,,,0\n\
    ,-74.2,40.5,-2.5,-3\n";

fn written(folder: &Path, work: &Path, format: TableFormat, crs: &str) -> PathBuf {
    let target = folder.join("out").with_extension(format.endings()[0]);
    let points = points(crs);
    convert(
        work,
        &columns(),
        Some(&points),
        &target,
        format,
        "openings",
        None,
    )
    .unwrap();
    target
}

#[test]
fn what_goes_out_comes_in_again() {
    let folder = tempfile::tempdir().unwrap();
    let work = csv(&folder, WORK);
    let texts = |value: &str| value.to_owned();
    let expected = [
        [
            "Gate, \"old\"",
            "-74.0335",
            "40.74",
            "0.1",
            "9007199254740993",
        ],
        ["Überweg", "-74.1", "40.75", "1e-7", ""],
        ["007", "", "", "", "0"],
        ["", "-74.2", "40.5", "-2.5", "-3"],
    ]
    .map(|row| row.map(texts).to_vec());
    for format in TableFormat::ALL {
        let path = written(folder.path(), &work, format, "EPSG:4326");
        let mut reader = TableReader::open(&path, format, None).unwrap();
        assert_eq!(reader.columns(), ["id", "x", "y", "depth_m", "planks"]);
        let has_points = format != TableFormat::Csv;
        assert_eq!(reader.has_points(), has_points, "{format:?}");
        assert_eq!(reader.point_crs().is_some(), has_points);
        assert!(
            reader
                .point_crs()
                .is_none_or(sillmark::crs::HorizontalCrs::is_geographic)
        );
        assert_eq!(reader.rows_hint(), has_points.then_some(4), "{format:?}");

        let mut starts = Vec::new();
        let rows = rest_of(&mut reader, 1, &mut starts);
        let values: Vec<_> = rows
            .iter()
            .map(|row| row.as_ref().unwrap().1.clone())
            .collect();
        assert_eq!(values, expected, "{format:?}");
        let found: Vec<_> = rows.iter().map(|row| row.as_ref().unwrap().2).collect();
        let place = |x, y| has_points.then_some((x, y));
        assert_eq!(
            found,
            [
                place(-74.0335, 40.74),
                place(-74.1, 40.75),
                None,
                place(-74.2, 40.5)
            ],
            "{format:?}"
        );

        assert_eq!(starts.len(), 4, "a block a row");
        for (before, start) in starts.into_iter().rev() {
            reader.seek(start).unwrap();
            let rest = rest_of(&mut reader, 1 << 20, &mut Vec::new());
            assert_eq!(rest, rows[before..], "{format:?} from {start:?}");
        }
    }
}

#[test]
fn the_same_rows_give_the_same_bytes() {
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let work = csv(&one, WORK);
    for format in TableFormat::ALL {
        let first = written(one.path(), &work, format, "EPSG:4326");
        std::thread::sleep(std::time::Duration::from_millis(20));
        let second = written(other.path(), &work, format, "EPSG:4326");
        let same = std::fs::read(first).unwrap() == std::fs::read(second).unwrap();
        assert!(same, "{format:?}");
    }
}

#[test]
fn many_rows_keep_their_order() {
    use std::fmt::Write;
    let folder = tempfile::tempdir().unwrap();
    let mut text = "id,x,y,depth_m,planks\n".to_owned();
    for row in 0..30_000 {
        let (x, y) = (f64::from(row % 173), f64::from(row % 89));
        writeln!(text, "r{row},{x},{y},{},{row}", f64::from(row) / 7.0).unwrap();
    }
    let work = csv(&folder, &text);
    let expected = rows_in(&work, TableFormat::Csv, 1 << 16);
    for format in TableFormat::ALL {
        let path = written(folder.path(), &work, format, "EPSG:4326");
        let found = rows_in(&path, format, 1 << 16);
        assert_eq!(found.len(), expected.len());
        for (found, expected) in found.into_iter().zip(&expected) {
            assert_eq!(found.unwrap().1, expected.as_ref().unwrap().1, "{format:?}");
        }
    }
}

#[test]
fn points_of_a_projected_system_are_kept_and_in_geojson_turned_to_degrees() {
    let folder = tempfile::tempdir().unwrap();
    // The grid's origin in longitude: 74 degrees west, 300 000 m east (EPSG:2263, NAD83 / New
    // York Long Island, US survey feet).
    let work = csv(&folder, "id,x,y,depth_m,planks\na,984250,200000,,\n");
    for format in TableFormat::ALL {
        let path = written(folder.path(), &work, format, "EPSG:2263");
        let point = rows_in(&path, format, 1000)[0].as_ref().unwrap().2;
        match format {
            TableFormat::Csv => assert_eq!(point, None),
            TableFormat::GeoJson => {
                let (longitude, latitude) = point.unwrap();
                assert!((longitude + 74.0).abs() < 1e-6, "{longitude}");
                assert!((40.0..41.0).contains(&latitude), "{latitude}");
            }
            _ => {
                assert_eq!(point, Some((984_250.0, 200_000.0)));
                let reader = TableReader::open(&path, format, None).unwrap();
                assert_eq!(
                    reader.point_crs().unwrap().definition(),
                    "EPSG:2263",
                    "{format:?}"
                );
            }
        }
    }
}

#[test]
fn a_table_without_points_and_one_without_rows_are_written() {
    let folder = tempfile::tempdir().unwrap();
    for (name, text, count) in [("some", WORK, 4), ("none", "id,x,y,depth_m,planks\n", 0)] {
        let work = csv(&folder, text);
        for format in TableFormat::ALL {
            for points in [None, Some(points("EPSG:4326"))] {
                let target = folder.path().join(name).with_extension(format.endings()[0]);
                let points = points.as_ref();
                convert(&work, &columns(), points, &target, format, "openings", None).unwrap();
                let rows = rows_in(&target, format, 1000);
                assert_eq!(rows.len(), count, "{format:?} {points:?}");
                assert!(
                    rows.iter()
                        .all(|row| points.is_some() || row.as_ref().unwrap().2.is_none())
                );
            }
        }
    }
}

#[test]
fn a_geometry_that_is_no_point_is_a_fault_and_the_rest_is_read() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mixed.geojson");
    std::fs::write(
        &path,
        r#"{"type":"FeatureCollection","features":[
        {"type":"Feature","properties":{"id":"a"},"geometry":{"type":"Point","coordinates":[1,2]}},
        {"type":"Feature","properties":{"id":"b"},"geometry":{"type":"LineString","coordinates":[[1,2],[3,4]]}},
        {"type":"Feature","properties":{"id":"c"},"geometry":null}]}"#,
    )
    .unwrap();
    let rows = rows_in(&path, TableFormat::GeoJson, 1000);
    assert_eq!(rows[0].as_ref().unwrap().2, Some((1.0, 2.0)));
    assert_eq!(
        rows[1].as_ref().unwrap_err().to_string(),
        "line 2: geometry \"LINESTRING\": it is not a point; accepted: a point, or no geometry"
    );
    assert_eq!(rows[2].as_ref().unwrap().2, None);
}

#[test]
fn a_file_that_is_cut_short_is_never_a_shorter_table() {
    use std::fmt::Write;
    let folder = tempfile::tempdir().unwrap();
    let mut text = "id,x,y,depth_m,planks\n".to_owned();
    for row in 0..3_000 {
        writeln!(text, "r{row},1,2,{row},{row}").unwrap();
    }
    let work = csv(&folder, &text);
    for format in TableFormat::ALL.into_iter().skip(1) {
        let path = written(folder.path(), &work, format, "EPSG:4326");
        let bytes = std::fs::read(&path).unwrap();
        std::fs::write(&path, &bytes[..bytes.len() * 2 / 3]).unwrap();
        let outcome = TableReader::open(&path, format, None).and_then(|mut reader| {
            while reader.next_block(1 << 16)?.is_some() {}
            Ok(())
        });
        assert!(outcome.is_err(), "{format:?}");
    }
}
