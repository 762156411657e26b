//! How a raster is cut into tiles: along the blocks of its file.

use std::ops::Range;

use super::values::Precision;
use super::window::Window;

/// A block of so many cells a side is a tile of its own.
const BLOCK_SIDE: std::ops::RangeInclusive<usize> = 64..=1024;

/// Cells a side that tiles of smaller blocks have at least.
const LEAST_SIDE: usize = 256;

/// Bytes of a tile that is cut from strips: a sixteenth of what is kept by default, so that
/// the strips around a place are kept together however wide the raster is.
const BAND_BYTES: usize = 2 << 20;

/// Rows that a tile of strips has at most.
const MOST_ROWS: usize = 256;

/// The tiles of a raster.
///
/// A tile is one block of the file where that is handy (64 to 1024 cells a side), several
/// whole ones where blocks are smaller, and a whole part of one where they are larger: so no
/// block is decoded for two tiles that lie apart. Strips run over the whole width, and so do
/// their tiles: were they narrower, every strip would be decoded once for each of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Tiling {
    columns: usize,
    rows: usize,
    tile_columns: usize,
    tile_rows: usize,
}

/// A tile by its column and row among the tiles.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct TileIndex {
    pub(super) column: u32,
    pub(super) row: u32,
}

impl Tiling {
    /// For a raster of `size` (columns, rows) stored in blocks of `block`.
    pub(super) fn new(size: (usize, usize), block: (usize, usize), precision: Precision) -> Self {
        let (columns, rows) = size;
        let (block_columns, block_rows) = (block.0.max(1), block.1.max(1));
        let is_handy = |side: usize| BLOCK_SIDE.contains(&side);
        let is_strip =
            block_columns >= columns && !(is_handy(block_columns) && is_handy(block_rows));
        let (tile_columns, tile_rows) = if is_strip {
            let row_bytes = columns * precision.bytes();
            let most = (BAND_BYTES / row_bytes.max(1)).clamp(1, MOST_ROWS);
            let rows = if block_rows <= most {
                most / block_rows * block_rows
            } else {
                largest_part(block_rows, 1..=most).unwrap_or(most)
            };
            (columns, rows)
        } else {
            (side(block_columns), side(block_rows))
        };
        Self {
            columns,
            rows,
            tile_columns,
            tile_rows,
        }
    }

    /// Cells of a whole tile.
    pub(super) const fn cells(&self) -> usize {
        self.tile_columns * self.tile_rows
    }

    /// The tile that holds a cell.
    pub(super) fn holding(&self, column: usize, row: usize) -> TileIndex {
        TileIndex {
            column: short(column / self.tile_columns),
            row: short(row / self.tile_rows),
        }
    }

    /// The cells of a tile.
    pub(super) fn window(&self, tile: TileIndex) -> Window {
        let column = tile.column as usize * self.tile_columns;
        let row = tile.row as usize * self.tile_rows;
        Window {
            column,
            row,
            columns: self.tile_columns.min(self.columns.saturating_sub(column)),
            rows: self.tile_rows.min(self.rows.saturating_sub(row)),
        }
    }

    /// The tiles that hold cells of a rectangle that is not empty, row after row.
    pub(super) fn over(
        &self,
        columns: &Range<usize>,
        rows: &Range<usize>,
    ) -> impl Iterator<Item = TileIndex> + use<> {
        let first = self.holding(columns.start, rows.start);
        let last = self.holding(columns.end.saturating_sub(1), rows.end.saturating_sub(1));
        (first.row..=last.row).flat_map(move |row| {
            (first.column..=last.column).map(move |column| TileIndex { column, row })
        })
    }
}

/// The side of a tile for the side of a block.
fn side(block: usize) -> usize {
    if block < *BLOCK_SIDE.start() {
        block * LEAST_SIDE.div_ceil(block)
    } else if block > *BLOCK_SIDE.end() {
        // The blocks of a GeoTIFF are multiples of sixteen: there is such a part.
        largest_part(block, BLOCK_SIDE).unwrap_or(LEAST_SIDE)
    } else {
        block
    }
}

/// The largest whole part of a number within bounds.
fn largest_part(whole: usize, bounds: std::ops::RangeInclusive<usize>) -> Option<usize> {
    bounds.rev().find(|part| whole.is_multiple_of(*part))
}

/// Rasters have fewer than 2³¹ columns: the conversion is exact.
fn short(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tile(size: (usize, usize), block: (usize, usize)) -> (usize, usize) {
        let tiling = Tiling::new(size, block, Precision::Single);
        (tiling.tile_columns, tiling.tile_rows)
    }

    #[test]
    fn tiles_follow_blocks() {
        assert_eq!(tile((8192, 8192), (512, 512)), (512, 512));
        assert_eq!(tile((8192, 8192), (64, 1024)), (64, 1024));
        assert_eq!(tile((300, 300), (512, 512)), (512, 512));
        assert_eq!(tile((8192, 8192), (16, 48)), (256, 288));
        assert_eq!(tile((8192, 8192), (2048, 4096)), (1024, 1024));
        assert_eq!(tile((9000, 9000), (2096, 512)), (524, 512));
    }

    #[test]
    fn strips_stay_whole() {
        // 2 MiB are 64 rows of 8192 single-precision numbers.
        assert_eq!(tile((8192, 8192), (8192, 1)), (8192, 64));
        assert_eq!(tile((8192, 8192), (8192, 5)), (8192, 60));
        assert_eq!(tile((8192, 8192), (8192, 8192)), (8192, 64));
        assert_eq!(tile((1_000_000, 9000), (1_000_000, 1)), (1_000_000, 1));
        assert_eq!(tile((300, 900), (300, 27)), (300, 243));
        assert_eq!(tile((4, 3), (4, 3)), (4, 255));
    }

    #[test]
    fn every_cell_is_in_the_tile_that_is_said_to_hold_it() {
        let tiling = Tiling::new((1000, 700), (128, 80), Precision::Double);
        for (column, row) in [(0, 0), (127, 79), (128, 80), (999, 699)] {
            let window = tiling.window(tiling.holding(column, row));
            assert!((window.column..window.column + window.columns).contains(&column));
            assert!((window.row..window.row + window.rows).contains(&row));
        }
        let edge = tiling.window(tiling.holding(999, 699));
        assert_eq!((edge.columns, edge.rows), (104, 60));
        assert_eq!(tiling.over(&(120..130), &(79..81)).count(), 4);
    }
}
