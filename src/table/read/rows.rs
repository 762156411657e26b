//! Rows of a format other than CSV, as text in one allocation.

use crate::table::RecordFault;
use crate::table::block::{Cells, Record};

/// Rows one after the other: the texts of all cells in one string.
#[derive(Debug, Default)]
pub(in crate::table) struct Rows {
    width: usize,
    text: String,
    /// Where each cell's text ends.
    ends: Vec<usize>,
    lines: Vec<Row>,
}

#[derive(Debug)]
struct Row {
    number: u64,
    point: Result<Option<(f64, f64)>, Box<RecordFault>>,
}

impl Rows {
    pub(super) fn new(width: usize) -> Self {
        Self {
            width,
            ..Self::default()
        }
    }

    pub(in crate::table) fn bytes(&self) -> usize {
        self.text.len() + size_of::<usize>() * self.ends.len() + size_of::<Row>() * self.lines.len()
    }

    pub(in crate::table) const fn len(&self) -> usize {
        self.lines.len()
    }

    pub(super) fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }

    /// Where the next cell's text is to be appended.
    pub(super) const fn text(&mut self) -> &mut String {
        &mut self.text
    }

    /// Ends a cell.
    pub(super) fn end_cell(&mut self) {
        self.ends.push(self.text.len());
    }

    /// Ends a row, whose cells must all have been ended.
    pub(super) fn end_row(&mut self, number: u64, point: Result<Option<(f64, f64)>, RecordFault>) {
        debug_assert_eq!(self.ends.len(), (self.lines.len() + 1) * self.width);
        let point = point.map_err(Box::new);
        self.lines.push(Row { number, point });
    }

    pub(in crate::table) const fn records(&self) -> RowRecords<'_> {
        RowRecords {
            rows: self,
            next: 0,
        }
    }
}

/// Reads rows from the first.
#[derive(Debug)]
pub(in crate::table) struct RowRecords<'rows> {
    rows: &'rows Rows,
    next: usize,
}

impl<'rows> RowRecords<'rows> {
    pub(in crate::table) fn next(&mut self) -> Option<Result<Record<'rows>, RecordFault>> {
        let row = self.rows.lines.get(self.next)?;
        let first = self.next * self.rows.width;
        self.next += 1;
        let start = first
            .checked_sub(1)
            .map_or(0, |before| self.rows.ends[before]);
        Some(match &row.point {
            Ok(point) => Ok(Record {
                line: row.number,
                cells: Cells::Row {
                    start,
                    text: &self.rows.text,
                    ends: &self.rows.ends[first..first + self.rows.width],
                },
                point: *point,
            }),
            Err(fault) => Err(RecordFault::clone(fault)),
        })
    }
}
