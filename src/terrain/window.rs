//! A rectangle of cells.

use gdal::errors::GdalError;
use gdal::raster::RasterBand;

/// A rectangle of cells by its first column and row and its size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Window {
    pub(super) column: usize,
    pub(super) row: usize,
    pub(super) columns: usize,
    pub(super) rows: usize,
}

/// The stored values of a window, row after row.
///
/// GDAL's calls take (columns, rows) and its buffers are indexed by (row, column): this is
/// the one place that has to know.
pub(super) fn read(band: &RasterBand<'_>, window: Window) -> Result<Vec<f64>, GdalError> {
    let corner = (
        isize::try_from(window.column)?,
        isize::try_from(window.row)?,
    );
    let size = (window.columns, window.rows);
    let buffer = band.read_as::<f64>(corner, size, size, None)?;
    Ok(buffer.into_shape_and_vec().1)
}
