//! A rectangle of cells.

use std::ops::Range;

use gdal::errors::GdalError;
use gdal::raster::{GdalType, RasterBand};

/// A rectangle of cells by its first column and row and its size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Window {
    pub(super) column: usize,
    pub(super) row: usize,
    pub(super) columns: usize,
    pub(super) rows: usize,
}

impl Window {
    /// Its columns, as far as they are among `columns`.
    pub(super) fn columns_among(&self, columns: &Range<usize>) -> Range<usize> {
        self.column.max(columns.start)..(self.column + self.columns).min(columns.end)
    }

    /// Its rows, as far as they are among `rows`.
    pub(super) fn rows_among(&self, rows: &Range<usize>) -> Range<usize> {
        self.row.max(rows.start)..(self.row + self.rows).min(rows.end)
    }
}

/// The stored values of a window, row after row.
///
/// GDAL's calls take (columns, rows) and its buffers are indexed by (row, column): this is
/// the one place that has to know.
pub(super) fn read<T: GdalType + Copy>(
    band: &RasterBand<'_>,
    window: Window,
) -> Result<Vec<T>, GdalError> {
    let corner = (
        isize::try_from(window.column)?,
        isize::try_from(window.row)?,
    );
    let size = (window.columns, window.rows);
    let buffer = band.read_as::<T>(corner, size, size, None)?;
    Ok(buffer.into_shape_and_vec().1)
}
