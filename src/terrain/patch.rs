//! Cells around a place that lie in one tile and all have a value: the usual case, read
//! without looking for tiles and voids at each point.

use std::ops::Range;

use geo::Coord;

use super::grid::{as_float, as_index};

/// A rectangle of cells of one tile, each with a value.
pub(super) struct Patch<'tile> {
    /// The tile's values from the rectangle's first cell on, row after row.
    values: &'tile [f32],
    /// Cells from one row to the next.
    stride: usize,
    columns: usize,
    rows: usize,
    /// Its first cell in the raster.
    first: Coord<f64>,
}

impl<'tile> Patch<'tile> {
    /// `values` are those of the tile from the first cell on; `None` where one is missing.
    pub(super) fn new(
        values: &'tile [f32],
        stride: usize,
        columns: &Range<usize>,
        rows: &Range<usize>,
    ) -> Option<Self> {
        let patch = Self {
            values,
            stride,
            columns: columns.len(),
            rows: rows.len(),
            first: Coord {
                x: as_float(columns.start),
                y: as_float(rows.start),
            },
        };
        // A sum is NaN where one of its parts is.
        let sums = (0..patch.rows).map(|row| {
            patch
                .row(row)?
                .iter()
                .copied()
                .reduce(|sum, value| sum + value)
        });
        let whole = sums.map(|sum| sum.is_some_and(|sum| !sum.is_nan()));
        whole.reduce(|all, row| all && row)?.then_some(patch)
    }

    fn row(&self, row: usize) -> Option<&'tile [f32]> {
        let start = row * self.stride;
        self.values.get(start..start + self.columns)
    }

    /// The stored value bilinear between the four cell centres around a position, which
    /// counts cells from the middle of the raster's first one.
    #[inline]
    pub(super) fn between(&self, position: Coord<f64>) -> Option<f64> {
        let at = position - self.first;
        let (column, row) = (as_index(at.x), as_index(at.y));
        let (right, down) = (at.x - as_float(column), at.y - as_float(row));
        let upper = self.values.get(row * self.stride + column..)?;
        let lower = self.values.get((row + 1) * self.stride + column..)?;
        let ([a, b, ..], [c, d, ..]) = (upper, lower) else {
            return None;
        };
        let [a, b, c, d] = [*a, *b, *c, *d].map(f64::from);
        let (above, below) = (a + right * (b - a), c + right * (d - c));
        Some(above + down * (below - above))
    }
}
