//! A stretch of a table: whole records, not yet parsed.

use std::sync::Arc;

use super::read::rows::{RowRecords, Rows};
use super::read::text::TextRecords;
use super::trimmed::trimmed;
use super::{Position, RecordFault};

/// Whole records of a table, to be parsed on any thread.
#[derive(Debug)]
pub struct Block {
    pub(super) columns: Arc<[String]>,
    pub(super) start: Position,
    pub(super) end: Position,
    pub(super) content: Content,
}

/// What a block holds.
#[derive(Debug)]
pub(super) enum Content {
    /// Records of a CSV file as they stand there.
    Text(Vec<u8>),
    /// Rows of another format, as text.
    Rows(Rows),
    /// One record that the cutting itself found to be at fault.
    Fault(RecordFault),
}

impl Block {
    /// Where its first record begins.
    #[must_use]
    pub const fn start(&self) -> Position {
        self.start
    }

    /// Where the record after its last one begins.
    #[must_use]
    pub const fn end(&self) -> Position {
        self.end
    }

    /// The names of the columns, in the order of the file.
    #[must_use]
    pub fn columns(&self) -> &[String] {
        &self.columns
    }

    /// How much text it holds, bytes.
    #[must_use]
    pub fn bytes(&self) -> usize {
        match &self.content {
            Content::Text(text) => text.len(),
            Content::Rows(rows) => rows.bytes(),
            Content::Fault(_) => 0,
        }
    }

    /// About how many records it holds: no fewer, unless some are at fault.
    #[must_use]
    pub fn records_hint(&self) -> usize {
        match &self.content {
            // The last may have no line end.
            Content::Text(text) => memchr::memchr_iter(b'\n', text).count() + 1,
            Content::Rows(rows) => rows.len(),
            Content::Fault(_) => 0,
        }
    }

    /// Reads its records from the first.
    #[must_use]
    pub fn records(&self) -> Records<'_> {
        Records(match &self.content {
            Content::Text(text) => Source::Text(TextRecords::new(text, self.start, &self.columns)),
            Content::Rows(rows) => Source::Rows(rows.records()),
            Content::Fault(fault) => Source::Fault(Some(fault)),
        })
    }
}

/// Reads the records of a [`Block`]; each is lent until the next is asked for.
#[derive(Debug)]
pub struct Records<'block>(Source<'block>);

#[derive(Debug)]
enum Source<'block> {
    Text(TextRecords<'block>),
    Rows(RowRecords<'block>),
    Fault(Option<&'block RecordFault>),
}

impl Records<'_> {
    /// The next record, or what is wrong with it; `None` after the last.
    #[allow(clippy::should_implement_trait)] // an `Iterator` cannot lend
    pub fn next(&mut self) -> Option<Result<Record<'_>, RecordFault>> {
        match &mut self.0 {
            Source::Text(records) => records.next(),
            Source::Rows(records) => records.next(),
            Source::Fault(fault) => fault.take().cloned().map(Err),
        }
    }
}

/// One row of a table: a text for each column and, where the format has one, a point.
#[derive(Clone, Copy, Debug)]
pub struct Record<'records> {
    pub(super) line: u64,
    pub(super) cells: Cells<'records>,
    pub(super) point: Option<(f64, f64)>,
}

/// The texts of a record.
#[derive(Clone, Copy, Debug)]
pub(super) enum Cells<'records> {
    /// A parsed CSV record, and as it stands in the file.
    Text {
        record: &'records csv::StringRecord,
        raw: &'records [u8],
    },
    /// Texts one after the other, and where each ends.
    Row {
        start: usize,
        text: &'records str,
        ends: &'records [usize],
    },
}

impl<'records> Record<'records> {
    /// The line where it begins (CSV; the header is line 1), or the number of the feature or
    /// row.
    #[must_use]
    pub const fn line(&self) -> u64 {
        self.line
    }

    /// The trimmed text in a column, counted from 0; empty where it is missing or there is no
    /// such column.
    #[must_use]
    pub fn get(&self, column: usize) -> &'records str {
        let text = match self.cells {
            Cells::Text { record, .. } => record.get(column),
            Cells::Row { start, text, ends } => ends.get(column).and_then(|end| {
                let before = column
                    .checked_sub(1)
                    .map_or(Some(&start), |left| ends.get(left));
                text.get(*before?..*end)
            }),
        };
        trimmed(text.unwrap_or_default())
    }

    /// The feature's point in the table's coordinate reference system, x (east) first; `None`
    /// where the format has no geometry or this row has none.
    #[must_use]
    pub const fn point(&self) -> Option<(f64, f64)> {
        self.point
    }

    /// The record as it stands in a CSV file, with its line end; empty for other formats.
    pub(super) const fn raw(&self) -> &'records [u8] {
        match self.cells {
            Cells::Text { raw, .. } => raw,
            Cells::Row { .. } => &[],
        }
    }
}
