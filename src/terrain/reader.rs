//! Reading around one place: the tile in hand first.

use std::ops::Range;
use std::rc::Rc;

use geo::Coord;

use super::cells::Scale;
use super::grid::Between;
use super::tile::Tile;
use super::{Gap, Raster, TerrainError};

/// Reads a raster and keeps hold of the tile it read last, so that the cells around a place
/// cost one look into the memory of tiles and not one each.
pub(super) struct Reader<'raster> {
    raster: &'raster Raster,
    scale: Scale,
    tile: Option<Rc<Tile>>,
}

impl<'raster> Reader<'raster> {
    pub(super) const fn new(raster: &'raster Raster, scale: Scale) -> Self {
        Self {
            raster,
            scale,
            tile: None,
        }
    }

    /// Height in metres at a point of the raster's plane.
    #[inline]
    pub(super) fn metres_at(
        &mut self,
        point: Coord<f64>,
    ) -> Result<Result<f64, Gap>, TerrainError> {
        let Some((column, row)) = self.raster.cells_around(point) else {
            return Ok(Err(Gap::Outside));
        };
        Ok(self.bilinear(column, row)?.ok_or(Gap::Void))
    }

    /// Height of a cell in metres, NaN where it has none.
    pub(super) fn cell(&mut self, column: usize, row: usize) -> Result<f64, TerrainError> {
        let scale = self.scale;
        let tile = self.tile(column, row)?;
        Ok(scale.metres(tile.value(column, row)))
    }

    /// Height in metres between four cells; `None` where one that has a share has no value.
    #[inline]
    pub(super) fn bilinear(
        &mut self,
        column: Between,
        row: Between,
    ) -> Result<Option<f64>, TerrainError> {
        let scale = self.scale;
        let tile = self.tile(column.first, row.first)?;
        let corners = if tile.holds((column.first, row.first), (column.second, row.second)) {
            tile.corners(column, row).map(|stored| scale.metres(stored))
        } else {
            self.corners_on_border(column, row)?
        };
        let of_row = [1.0 - row.share, row.share];
        let of_column = [1.0 - column.share, column.share];
        let mut sum = 0.0;
        for (index, height) in corners.into_iter().enumerate() {
            let share = of_row[index / 2] * of_column[index % 2];
            if share > 0.0 {
                sum += share * height;
            }
        }
        Ok(Some(sum).filter(|sum| !sum.is_nan()))
    }

    #[cold]
    fn corners_on_border(
        &mut self,
        column: Between,
        row: Between,
    ) -> Result<[f64; 4], TerrainError> {
        Ok([
            self.cell(column.first, row.first)?,
            self.cell(column.second, row.first)?,
            self.cell(column.first, row.second)?,
            self.cell(column.second, row.second)?,
        ])
    }

    /// Whether one of the 4 × 4 cells around a point has no value.
    pub(super) fn no_data_nearby(
        &mut self,
        column: Between,
        row: Between,
    ) -> Result<bool, TerrainError> {
        let grid = &self.raster.grid;
        let around = |first: usize, count: usize| first.saturating_sub(1)..(first + 3).min(count);
        let columns = around(column.first, grid.columns);
        let rows = around(row.first, grid.rows);
        let tile = self.tile(column.first, row.first)?;
        if tile.holds((columns.start, rows.start), (columns.end - 1, rows.end - 1)) {
            return Ok(tile.has_void(&columns, &rows));
        }
        self.has_void_on_border(&columns, &rows)
    }

    #[cold]
    fn has_void_on_border(
        &mut self,
        columns: &Range<usize>,
        rows: &Range<usize>,
    ) -> Result<bool, TerrainError> {
        for row in rows.clone() {
            for column in columns.clone() {
                if self.cell(column, row)?.is_nan() {
                    return Ok(true);
                }
            }
        }
        Ok(false)
    }

    /// The tile that holds a cell.
    #[inline]
    fn tile(&mut self, column: usize, row: usize) -> Result<&Tile, TerrainError> {
        let tile = match self.tile.take() {
            Some(tile) if tile.holds((column, row), (column, row)) => tile,
            _ => self
                .raster
                .tile(self.raster.tiling().holding(column, row))?,
        };
        Ok(self.tile.insert(tile))
    }
}
