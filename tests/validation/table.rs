//! Tables against other libraries: they read what we write, we read what they write.

use std::path::Path;

use sillmark::crs::CrsDefinition;
use sillmark::table::{ColumnKind, OutColumn, Points, TableFormat, TableReader, convert};

use crate::peer;

const WORK: &str = "id,x,y,depth_m,planks\n\
    \"Gate, \"\"old\"\"\",-74.0335,40.74,0.1,9007199254740993\n\
    Überweg,-74.1,40.75,0.0000001,4\n\
    007,,,,0\n\
    ,-74.2,40.5,-2.5,-3\n";

#[test]
fn others_read_what_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let work = folder.path().join("work.csv");
    std::fs::write(&work, WORK).unwrap();
    let kinds = [
        ("id", ColumnKind::Text),
        ("x", ColumnKind::Number),
        ("y", ColumnKind::Number),
        ("depth_m", ColumnKind::Number),
        ("planks", ColumnKind::Whole),
    ];
    let columns = kinds.map(|(name, kind)| OutColumn {
        name: name.to_owned(),
        kind,
    });
    let points = Points {
        x: 1,
        y: 2,
        crs: CrsDefinition::from_text("EPSG:4326").unwrap().horizontal,
    };
    for format in TableFormat::ALL.into_iter().skip(1) {
        let target = folder
            .path()
            .join("out")
            .with_extension(format.endings()[0]);
        convert(
            &work,
            &columns,
            Some(&points),
            &target,
            format,
            "openings",
            None,
        )
        .unwrap();
        let Some(lines) = peer::run("table_rows.py", &[target.as_os_str()]) else {
            return;
        };
        // A system that GeoParquet leaves out is OGC:CRS84.
        let system = match format {
            TableFormat::Parquet => "CRS84",
            _ => "4326",
        };
        assert_eq!(
            lines,
            [
                format!("id|x|y|depth_m|planks|{system}"),
                "'Gate, \"old\"'|-74.0335|40.74|0.1|9007199254740993|(-74.0335, 40.74)".to_owned(),
                "'Überweg'|-74.1|40.75|1e-07|4|(-74.1, 40.75)".to_owned(),
                "'007'|None|None|None|0|None".to_owned(),
                "None|-74.2|40.5|-2.5|-3|(-74.2, 40.5)".to_owned(),
            ],
            "{format:?}"
        );
    }
}

#[test]
fn what_others_write_is_read() {
    let folder = tempfile::tempdir().unwrap();
    if peer::run("table_write.py", &[folder.path().as_os_str()]).is_none() {
        return;
    }
    for name in [
        "out.gpkg",
        "out.fgb",
        "out.geojson",
        "wkb.parquet",
        "point.parquet",
    ] {
        let (columns, rows) = read(&folder.path().join(name));
        assert_eq!(columns, ["id", "depth_m", "planks", "flooded"], "{name}");
        // GDAL keeps a truth value as 1 or 0.
        let (yes, no) = if name.ends_with("parquet") {
            ("true", "false")
        } else {
            ("1", "0")
        };
        assert_eq!(
            rows,
            [
                format!("a|0.1|9007199254740993|{yes}|Some((-74.0335, 40.74))"),
                format!("Überweg, \"old\"|1e-7||{no}|Some((-74.1, 40.75))"),
                format!("||-3|{yes}|Some((-74.2, 40.5))"),
            ],
            "{name}"
        );
    }
    let (columns, rows) = read(&folder.path().join("plain.parquet"));
    assert_eq!(columns, ["id", "single", "day", "time", "cost", "small"]);
    assert_eq!(
        rows,
        [
            "a|0.1|2022-01-08|2023-11-14T22:13:20.123Z|12.50|-7|None",
            "b|||||200|None"
        ]
    );
    let path = folder.path().join("zstd.parquet");
    let mut reader = TableReader::open(&path, TableFormat::Parquet, None).unwrap();
    let error = reader.next_block(1000).unwrap_err().to_string();
    assert!(
        error.ends_with(
            "compression: zstd is not built in; accepted: Parquet compressed with Snappy, or not compressed"
        ),
        "{error}"
    );
}

fn read(path: &Path) -> (Vec<String>, Vec<String>) {
    let format = TableFormat::from_path(path).unwrap();
    let mut reader = TableReader::open(path, format, None).unwrap();
    let columns = reader.columns().to_vec();
    let mut rows = Vec::new();
    while let Some(block) = reader.next_block(1000).unwrap() {
        let mut records = block.records();
        while let Some(record) = records.next() {
            let record = record.unwrap();
            let values: Vec<&str> = (0..columns.len())
                .map(|column| record.get(column))
                .collect();
            rows.push(format!("{}|{:?}", values.join("|"), record.point()));
        }
    }
    (columns, rows)
}
