//! Which cells a place may ask for: for those who bring only a part of a raster here.

use std::ops::Range;

use super::{Dem, TerrainError};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// Cells beyond those within a margin: a height lies between four cells, and those around them
/// are asked for voids; along the edge of a zone the slope is taken over three cells to either
/// side, and the whole is moved by some cells to lie best on the terrain.
const BESIDE: usize = 12;

impl Dem {
    /// Columns and rows.
    pub(crate) fn size(&self) -> (usize, usize) {
        (self.grid.columns, self.grid.rows)
    }

    /// The cells that anything within `margin` of a place is read from, columns and rows; `None`
    /// where they all lie outside the raster.
    ///
    /// # Errors
    /// [`TerrainError`] where the transformation is not known.
    pub(crate) fn cells_about(
        &self,
        location: Location,
        margin: Length,
    ) -> Result<Option<[Range<usize>; 2]>, TerrainError> {
        let Some(frame) = self.frame(location)? else {
            return Ok(None);
        };
        // A box of no size may be empty.
        let within = self.cells_within(&frame, margin.get::<meter>().max(0.01));
        let wider = |cells: Range<usize>, count: usize| {
            cells.start.saturating_sub(BESIDE)..(cells.end + BESIDE).min(count)
        };
        Ok(within.map(|[columns, rows]| {
            [
                wider(columns, self.grid.columns),
                wider(rows, self.grid.rows),
            ]
        }))
    }

    /// What the raster covers, where it does not hold a place.
    ///
    /// # Errors
    /// [`TerrainError`] where the transformation is not known.
    pub(crate) fn beyond(&self, location: Location) -> Result<Option<TerrainError>, TerrainError> {
        self.reach(location)
    }

    /// Whether a cell has no value.
    ///
    /// # Errors
    /// [`TerrainError`] where the file cannot be read.
    pub(crate) fn is_void(&self, column: usize, row: usize) -> Result<bool, TerrainError> {
        Ok(self.reader().cell(column, row)?.is_nan())
    }
}
