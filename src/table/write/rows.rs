//! The rows of the work file with their types.

use std::path::{Path, PathBuf};

use super::{ColumnKind, OutColumn, Points};
use crate::table::block::Record;
use crate::table::{RecordFault, TableError, TableFormat, TableReader};

/// How much of the work file is held at a time.
const BLOCK: usize = 1 << 20;

/// Reads the work file row by row.
pub(super) struct WorkRows<'columns> {
    path: PathBuf,
    reader: TableReader,
    columns: &'columns [OutColumn],
    points: Option<&'columns Points>,
}

/// One value of a row; in JSON, missing is null.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
#[serde(untagged)]
pub(super) enum Value<'row> {
    Missing,
    Text(&'row str),
    Number(f64),
    Whole(i64),
}

/// One row.
pub(super) struct Row<'row> {
    path: &'row Path,
    record: Record<'row>,
    columns: &'row [OutColumn],
    points: Option<&'row Points>,
}

impl<'columns> WorkRows<'columns> {
    pub(super) fn open(
        path: &Path,
        columns: &'columns [OutColumn],
        points: Option<&'columns Points>,
    ) -> Result<Self, TableError> {
        let reader = TableReader::open(path, TableFormat::Csv, None)?;
        let expected = || columns.iter().map(|column| column.name.as_str());
        if !expected().eq(reader.columns().iter().map(String::as_str)) {
            let found = reader.columns().join(",");
            let accepted = expected().collect::<Vec<_>>().join(",");
            return Err(TableError::refused(path, "header", found, accepted));
        }
        Ok(Self {
            path: path.to_owned(),
            reader,
            columns,
            points,
        })
    }

    /// Hands every row to `visit`.
    pub(super) fn each(
        &mut self,
        mut visit: impl FnMut(&Row<'_>) -> Result<(), TableError>,
    ) -> Result<(), TableError> {
        while let Some(block) = self.reader.next_block(BLOCK)? {
            let mut records = block.records();
            while let Some(record) = records.next() {
                visit(&Row {
                    path: &self.path,
                    record: record.map_err(|fault| TableError::row(&self.path, fault))?,
                    columns: self.columns,
                    points: self.points,
                })?;
            }
        }
        Ok(())
    }
}

impl<'row> Row<'row> {
    /// The value in a column.
    pub(super) fn value(&self, column: usize) -> Result<Value<'row>, TableError> {
        let text = self.record.get(column);
        if text.is_empty() {
            return Ok(Value::Missing);
        }
        let kind = self.columns.get(column).map(|column| column.kind);
        match kind.unwrap_or(ColumnKind::Text) {
            ColumnKind::Text => Ok(Value::Text(text)),
            ColumnKind::Number => self.number(column).map(Value::Number),
            ColumnKind::Whole => text.parse().map(Value::Whole).map_err(|_| {
                self.fault(column, "it is not a whole number of 64 bits", "such as 12")
            }),
        }
    }

    /// The row's point; `None` where both of its columns are empty.
    pub(super) fn point(&self) -> Result<Option<(f64, f64)>, TableError> {
        let Some(points) = self.points else {
            return Ok(None);
        };
        let is_empty = |column| self.record.get(column).is_empty();
        if is_empty(points.x) && is_empty(points.y) {
            return Ok(None);
        }
        Ok(Some((self.number(points.x)?, self.number(points.y)?)))
    }

    /// The same file and line, for an error that another part finds.
    pub(super) fn fault(&self, column: usize, problem: &str, accepted: &str) -> TableError {
        let name = self
            .columns
            .get(column)
            .map_or("record", |column| &column.name);
        let fault = RecordFault {
            line: self.record.line(),
            field: name.to_owned(),
            value: self.record.get(column).to_owned(),
            problem: problem.to_owned(),
            accepted: accepted.to_owned(),
        };
        TableError::row(self.path, fault)
    }

    fn number(&self, column: usize) -> Result<f64, TableError> {
        let number: Option<f64> = self.record.get(column).parse().ok();
        number
            .filter(|number| number.is_finite())
            .ok_or_else(|| self.fault(column, "it is not a finite number", "such as 2.75"))
    }
}
