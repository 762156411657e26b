//! Parquet, plain or `GeoParquet`. Columns that are no single value (lists, structures, bytes)
//! are passed over.

mod cell;
mod geo;
mod wkb;

use std::fs::File;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use arrow_array::RecordBatch;
use parquet::arrow::ProjectionMask;
use parquet::arrow::arrow_reader::{
    ArrowReaderMetadata, ArrowReaderOptions, ParquetRecordBatchReader,
    ParquetRecordBatchReaderBuilder,
};

use self::cell::Cell;
use self::geo::{GeoColumn, PointCells};
use super::rows::Rows;
use crate::crs::HorizontalCrs;
use crate::table::block::{Block, Content};
use crate::table::header::column_names;
use crate::table::{Position, TableError};

/// Rows that are decoded at a time.
const BATCH_ROWS: usize = 1024;

/// Reads the rows of a Parquet file.
pub(super) struct ColumnarTable {
    path: PathBuf,
    metadata: ArrowReaderMetadata,
    columns: Arc<[String]>,
    /// The columns that are read, by their positions in the file.
    picked: Vec<usize>,
    geo: Option<GeoColumn>,
    batches: ParquetRecordBatchReader,
    /// What was decoded and not yet given out, from this row of it.
    pending: Option<(RecordBatch, usize)>,
    row: u64,
}

impl ColumnarTable {
    pub(super) fn open(path: &Path) -> Result<(Self, Arc<[String]>), TableError> {
        let file = File::open(path).map_err(TableError::system(path, "opening"))?;
        // Without the writer's own schema, texts have one type only.
        let options = ArrowReaderOptions::new().with_skip_arrow_metadata(true);
        let metadata = ArrowReaderMetadata::load(&file, options).map_err(|error| {
            let accepted = "a whole Parquet file, not encrypted";
            TableError::refused(path, "Parquet", error.to_string(), accepted)
        })?;
        let geo = GeoColumn::find(path, &metadata)?;
        let place = geo.as_ref().map(|geo| geo.column);
        let (mut picked, mut names) = (Vec::new(), Vec::new());
        for (index, field) in metadata.schema().fields().iter().enumerate() {
            if Some(index) != place && Cell::is_known(field.data_type()) {
                names.push(field.name().as_str());
                picked.push(index);
            }
        }
        let columns = column_names(path, names.into_iter())?;
        let batches = batches(path, &metadata, &picked, place, 0)?;
        let table = Self {
            path: path.to_owned(),
            metadata,
            columns: Arc::clone(&columns),
            picked,
            geo,
            batches,
            pending: None,
            row: 0,
        };
        Ok((table, columns))
    }

    pub(super) const fn has_points(&self) -> bool {
        self.geo.is_some()
    }

    pub(super) fn crs(&self) -> Option<&HorizontalCrs> {
        self.geo.as_ref().and_then(|geo| geo.crs.as_ref())
    }

    pub(super) fn rows(&self) -> u64 {
        let rows = self.metadata.metadata().file_metadata().num_rows();
        u64::try_from(rows).unwrap_or(0)
    }

    pub(super) const fn position(&self) -> Position {
        Position::Row { row: self.row }
    }

    pub(super) fn next_block(&mut self, limit: usize) -> Result<Option<Block>, TableError> {
        let start = self.position();
        let mut rows = Rows::new(self.columns.len());
        while rows.is_empty() || rows.bytes() < limit {
            let Some((batch, from)) = self.batch()? else {
                break;
            };
            let next = self.take(&mut rows, &batch, from, limit);
            self.pending = (next < batch.num_rows()).then_some((batch, next));
        }
        Ok((!rows.is_empty()).then(|| Block {
            columns: Arc::clone(&self.columns),
            start,
            end: self.position(),
            content: Content::Rows(rows),
        }))
    }

    pub(super) fn seek(&mut self, position: Position) -> Result<(), TableError> {
        let row = super::row_of(&self.path, position, self.rows())?;
        let place = self.geo.as_ref().map(|geo| geo.column);
        self.batches = batches(&self.path, &self.metadata, &self.picked, place, row)?;
        (self.pending, self.row) = (None, row);
        Ok(())
    }

    /// What is left of the batch at hand, or the next one.
    fn batch(&mut self) -> Result<Option<(RecordBatch, usize)>, TableError> {
        if self.pending.is_some() {
            return Ok(self.pending.take());
        }
        match self.batches.next() {
            Some(Ok(batch)) => Ok(Some((batch, 0))),
            Some(Err(error)) => Err(unread(&self.path, &error.to_string())),
            None if self.row < self.rows() => {
                let found = format!("it ends after {} of {} rows", self.row, self.rows());
                Err(unread(&self.path, &found))
            }
            None => Ok(None),
        }
    }

    /// Takes rows of a batch until there are enough; gives the row to go on from.
    fn take(&mut self, rows: &mut Rows, batch: &RecordBatch, from: usize, limit: usize) -> usize {
        // A projection keeps the order of the file.
        let place = self.geo.as_ref().map(|geo| geo.column);
        let before = |column| self.picked.iter().filter(|other| **other < column).count();
        let place = place.map(before);
        let columns = batch.columns().iter().enumerate();
        let cells: Vec<Cell<'_>> = columns
            .filter(|(index, _)| Some(*index) != place)
            .map(|(_, array)| Cell::new(array))
            .collect();
        let points = place.map(|index| PointCells::new(batch.column(index)));
        for index in from..batch.num_rows() {
            for cell in &cells {
                cell.append(index, rows.text());
                rows.end_cell();
            }
            self.row += 1;
            let point = points.as_ref().map_or(Ok(None), |points| points.get(index));
            let number = self.row;
            rows.end_row(
                number,
                point.map_err(|found| super::no_point(number, found)),
            );
            if rows.bytes() >= limit {
                return index + 1;
            }
        }
        batch.num_rows()
    }
}

fn batches(
    path: &Path,
    metadata: &ArrowReaderMetadata,
    picked: &[usize],
    place: Option<usize>,
    row: u64,
) -> Result<ParquetRecordBatchReader, TableError> {
    let file = File::open(path).map_err(TableError::system(path, "opening"))?;
    let wanted = picked.iter().copied().chain(place);
    let mask = ProjectionMask::roots(metadata.parquet_schema(), wanted);
    ParquetRecordBatchReaderBuilder::new_with_metadata(file, metadata.clone())
        .with_projection(mask)
        .with_batch_size(BATCH_ROWS)
        .with_offset(usize::try_from(row).unwrap_or(usize::MAX))
        .build()
        .map_err(|error| unread(path, &error.to_string()))
}

fn unread(path: &Path, message: &str) -> TableError {
    match message.split_once("Disabled feature at compile time: ") {
        Some((_, codec)) => {
            let found = format!("{} is not built in", codec.trim());
            let accepted = "Parquet compressed with Snappy, or not compressed";
            TableError::refused(path, "compression", found, accepted)
        }
        None => TableError::refused(path, "reading", message, "a whole Parquet file"),
    }
}
