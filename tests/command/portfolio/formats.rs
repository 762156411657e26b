//! Every format in and out: the same values.

use sillmark::crs::CrsDefinition;
use sillmark::table::{ColumnKind, OutColumn, Points, Position, TableFormat, TableReader, convert};

use super::{Answers, HEADER, ROWS, alder_lock, with_maps};
use crate::scratch::Scratch;

const ENDINGS: [&str; 5] = ["csv", "gpkg", "geojson", "fgb", "parquet"];

/// `table.csv` in every format, without a point where `crs` is none.
pub(super) fn tables(scratch: &Scratch, crs: Option<&str>) {
    let text = scratch.read("table.csv");
    let names = text.lines().next().unwrap().split(',');
    let numbers = ["longitude", "latitude", "x", "y", "threshold"];
    let columns: Vec<OutColumn> = names
        .map(|name| OutColumn {
            name: name.to_owned(),
            kind: if numbers.contains(&name) {
                ColumnKind::Number
            } else {
                ColumnKind::Text
            },
        })
        .collect();
    let points = crs.map(|crs| Points {
        x: 1,
        y: 2,
        crs: CrsDefinition::from_text(crs).unwrap().horizontal,
    });
    for ending in &ENDINGS[1..] {
        let target = scratch.path(&format!("table.{ending}"));
        let format = TableFormat::from_path(&target).unwrap();
        let work = scratch.path("table.csv");
        convert(
            &work,
            &columns,
            points.as_ref(),
            &target,
            format,
            "table",
            None,
        )
        .unwrap();
    }
}

/// The rows of a table of any format.
fn rows(scratch: &Scratch, name: &str) -> (Vec<String>, Vec<Vec<String>>, Vec<(f64, f64)>) {
    let path = scratch.path(name);
    let format = TableFormat::from_path(&path).unwrap();
    let mut reader = TableReader::open(&path, format, None).unwrap();
    let columns = reader.columns().to_vec();
    let (mut rows, mut points) = (Vec::new(), Vec::new());
    while let Some(block) = reader.next_block(1 << 16).unwrap() {
        assert!(!matches!(block.end(), Position::Row { row: 0 }));
        let mut records = block.records();
        while let Some(record) = records.next() {
            let record = record.unwrap();
            rows.push(
                (0..columns.len())
                    .map(|at| record.get(at).to_owned())
                    .collect(),
            );
            points.extend(record.point());
        }
    }
    (columns, rows, points)
}

/// Numbers as numbers: `187.1500` and `187.15` are one.
fn plain(rows: &[Vec<String>]) -> Vec<Vec<String>> {
    let plain = |text: &String| {
        text.parse()
            .map_or(text.clone(), |number: f64| number.to_string())
    };
    rows.iter()
        .map(|row| row.iter().map(plain).collect())
        .collect()
}

#[test]
fn every_format_in_gives_the_same_answers() {
    let scratch = alder_lock();
    scratch.write("table.csv", format!("{HEADER}{ROWS}"));
    tables(&scratch, Some("OGC:CRS84"));
    let expected = scratch.answer(&with_maps("table.csv", &[]));
    assert_eq!(Answers::read(&expected).len(), 4);
    for ending in ENDINGS {
        let name = format!("table.{ending}");
        assert_eq!(scratch.answer(&with_maps(&name, &[])), expected, "{name}");
    }
}

#[test]
fn every_format_out_holds_the_same_values_in_the_order_of_the_input() {
    let scratch = alder_lock();
    scratch.write("table.csv", format!("{HEADER}{ROWS}"));
    let stdout = scratch.answer(&with_maps("table.csv", &[]));
    for ending in ENDINGS {
        let name = format!("out.{ending}");
        let outcome = scratch.run_portfolio("table.csv", &["-o", &name]);
        assert_eq!((outcome.status, outcome.stderr.as_str()), (0, ""), "{name}");
        let (columns, found, points) = rows(&scratch, &name);
        let (header, expected) = stdout.split_once('\n').unwrap();
        assert_eq!(columns.join(","), header, "{name}");
        scratch.write("expected.csv", &stdout);
        let (_, of_csv, _) = rows(&scratch, "expected.csv");
        assert_eq!(plain(&found), plain(&of_csv), "{name}: {expected}");
        let wanted = if ending == "csv" { 0 } else { 4 };
        assert_eq!(points.len(), wanted, "{name}");
        if wanted > 0 {
            assert_eq!(points[0], (-87.498_762, 47.799_353), "{name}");
        }
    }
    assert_eq!(scratch.read("out.csv"), stdout);
    assert!(!scratch.path("out.csv.unfinished").exists());
}

#[test]
fn a_geopackage_has_points_a_system_and_a_style() {
    let scratch = alder_lock();
    scratch.write("table.csv", format!("{HEADER}{ROWS}"));
    scratch.run_portfolio("table.csv", &["-o", "out.gpkg"]);
    let open = TableReader::open(&scratch.path("out.gpkg"), TableFormat::GeoPackage, None);
    let reader = open.unwrap();
    assert!(reader.has_points());
    assert!(reader.point_crs().unwrap().is_geographic());
    let bytes = std::fs::read(scratch.path("out.gpkg")).unwrap();
    for word in ["layer_styles", "StyledLayerDescriptor", "unresolved"] {
        let found = bytes
            .windows(word.len())
            .any(|part| part == word.as_bytes());
        assert!(found, "{word}");
    }
}

#[test]
fn ranked_by_height_and_by_chance() {
    let scratch = alder_lock();
    scratch.write("table.csv", format!("{HEADER}{ROWS}"));
    for (by, column) in [
        ("height", "protection_height_m"),
        ("chance", "chance_at_sill"),
    ] {
        let options = ["-o", "ranked.csv", "--rank", by];
        assert_eq!(scratch.run_portfolio("table.csv", &options).status, 0);
        let ranked = Answers::read(&scratch.read("ranked.csv"));
        assert_eq!(ranked.len(), 4);
        let values: Vec<Option<f64>> = ranked
            .column(column)
            .iter()
            .map(|text| text.parse().ok())
            .collect();
        assert!(values.is_sorted_by(|one, two| one >= two), "{values:?}");
        assert_eq!(
            ranked.get(0, "rank"),
            if values[0].is_some() { "1" } else { "" }
        );
    }
}

#[test]
fn a_projected_table_keeps_its_system() {
    let scratch = alder_lock();
    // The mill, in UTM zone 16 north.
    scratch.write(
        "table.csv",
        "id,x,y,threshold,threshold_unit,vertical_datum\nmill,462650,5294120,612.9,ft,NAVD88\n",
    );
    let stdout = scratch.answer(&with_maps("table.csv", &["--crs", "EPSG:26916"]));
    assert!(stdout.starts_with("id,x,y,zone,"), "{stdout}");
    let outcome = scratch.run_portfolio("table.csv", &["--crs", "EPSG:26916", "-o", "out.gpkg"]);
    assert_eq!((outcome.status, outcome.stderr.as_str()), (0, ""));
    let open = TableReader::open(&scratch.path("out.gpkg"), TableFormat::GeoPackage, None);
    assert_eq!(
        open.unwrap().point_crs().unwrap().definition(),
        "EPSG:26916"
    );
    let (_, _, points) = rows(&scratch, "out.gpkg");
    assert_eq!(points, [(462_650.0, 5_294_120.0)]);
    // GeoJSON is always in degrees.
    scratch.run_portfolio("table.csv", &["--crs", "EPSG:26916", "-o", "out.geojson"]);
    let (_, _, points) = rows(&scratch, "out.geojson");
    assert!((points[0].0 + 87.5).abs() < 0.01, "{points:?}");
}

/// Points alone, in a projected system: the answer says x and y, not degrees.
#[test]
fn points_alone_are_enough() {
    let scratch = alder_lock();
    scratch.write(
        "table.csv",
        "id,east,north,threshold,threshold_unit,vertical_datum\n\
         mill,462650,5294120,612.9,ft,NAVD88\n",
    );
    tables(&scratch, Some("EPSG:26916"));
    let answers = scratch.portfolio("table.gpkg", &[]);
    assert_eq!(answers.get(0, "x"), "462650");
    assert_eq!(answers.get(0, "zone"), "AE");
    let answers = scratch.portfolio("table.geojson", &[]);
    assert_eq!(answers.get(0, "zone"), "AE");
    assert!(answers.get(0, "longitude").starts_with("-87.49"));
}

/// Longitude and latitude are degrees, whatever system the points beside them are in.
#[test]
fn columns_of_degrees_beside_projected_points() {
    let scratch = alder_lock();
    scratch.write(
        "table.csv",
        "id,east,north,longitude,latitude,threshold,threshold_unit,vertical_datum\n\
         mill,462650,5294120,-87.498762,47.799353,612.9,ft,NAVD88\n",
    );
    tables(&scratch, Some("EPSG:26916"));
    let alone = scratch.portfolio("table.csv", &[]);
    let beside = scratch.portfolio("table.gpkg", &[]);
    assert_eq!(alone.get(0, "zone"), "AE");
    assert_eq!(
        beside.get(0, "flood_level_m"),
        alone.get(0, "flood_level_m")
    );
}
