//! Rows of a table in and out.

mod blocks;
mod disk_full;
mod formats;
mod hostile;
mod landing;
mod numbers;
mod sort;
mod style;

use std::path::{Path, PathBuf};

use sillmark::table::{Position, RecordFault, TableFormat, TableReader};

/// A record as text: its line, its values, its point.
type Row = (u64, Vec<String>, Option<(f64, f64)>);

/// Everything in a table, read in blocks of about `limit` bytes.
fn rows_in(path: &Path, format: TableFormat, limit: usize) -> Vec<Result<Row, RecordFault>> {
    let mut reader = TableReader::open(path, format, None).unwrap();
    rest_of(&mut reader, limit, &mut Vec::new())
}

/// What is left of a table; where each block begins goes to `starts`.
fn rest_of(
    reader: &mut TableReader,
    limit: usize,
    starts: &mut Vec<(usize, Position)>,
) -> Vec<Result<Row, RecordFault>> {
    let mut rows = Vec::new();
    let mut end = None;
    while let Some(block) = reader.next_block(limit).unwrap() {
        assert!(end.is_none_or(|end| end == block.start()));
        end = Some(block.end());
        starts.push((rows.len(), block.start()));
        let mut records = block.records();
        while let Some(record) = records.next() {
            rows.push(record.map(|record| {
                let values = (0..block.columns().len())
                    .map(|column| record.get(column).to_owned())
                    .collect();
                (record.line(), values, record.point())
            }));
        }
    }
    rows
}

/// A CSV file of these bytes.
fn csv(folder: &tempfile::TempDir, bytes: impl AsRef<[u8]>) -> PathBuf {
    let path = folder.path().join("rows.csv");
    std::fs::write(&path, bytes).unwrap();
    path
}
