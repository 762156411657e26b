//! Where the cells lie.

use gdal::GeoTransform;
use geo::{Coord, Rect};

/// The cells of a raster in the plane of its coordinates.
///
/// A geotransform counts from the outer corner of the first cell, for rasters of points as
/// well as of areas: GDAL has moved the former by half a cell already.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Grid {
    /// Columns and rows.
    pub(super) columns: usize,
    pub(super) rows: usize,
    forward: GeoTransform,
    inverse: GeoTransform,
}

/// The two cells that a coordinate lies between along one axis, and its share of the second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Between {
    pub(super) first: usize,
    pub(super) second: usize,
    pub(super) share: f64,
    /// Beyond the outermost cell centre.
    pub(super) at_rim: bool,
}

impl Between {
    /// The cell that holds the coordinate.
    pub(super) fn nearest(self) -> usize {
        if self.share < 0.5 {
            self.first
        } else {
            self.second
        }
    }
}

impl Grid {
    /// `None` where the transform does not span a plane.
    pub(super) fn new(columns: usize, rows: usize, forward: GeoTransform) -> Option<Self> {
        let [x, column_x, row_x, y, column_y, row_y] = forward;
        let area = column_x * row_y - row_x * column_y;
        if !area.is_normal() || !x.is_finite() || !y.is_finite() || columns == 0 || rows == 0 {
            return None;
        }
        let inverse = [
            (row_x * y - row_y * x) / area,
            row_y / area,
            -row_x / area,
            (column_y * x - column_x * y) / area,
            -column_y / area,
            column_x / area,
        ];
        Some(Self {
            columns,
            rows,
            forward,
            inverse,
        })
    }

    /// The side of a square as large as one cell, in the unit of the coordinates.
    pub(super) fn cell_side(&self) -> f64 {
        let [_, column_x, row_x, _, column_y, row_y] = self.forward;
        (column_x * row_y - row_x * column_y).abs().sqrt()
    }

    /// The sides of a cell along its row and along its column.
    pub(super) fn sides(&self) -> [f64; 2] {
        let [_, column_x, row_x, _, column_y, row_y] = self.forward;
        [column_x.hypot(column_y), row_x.hypot(row_y)]
    }

    /// The size of the numbers that its coordinates are computed from.
    pub(super) fn reach(&self) -> f64 {
        let [x, _, _, y, _, _] = self.forward;
        let [along, down] = self.sides();
        x.abs() + y.abs() + along * as_float(self.columns) + down * as_float(self.rows)
    }

    /// Columns and rows from the outer corner of the first cell; `None` outside the raster.
    pub(super) fn position(&self, point: Coord<f64>) -> Option<Coord<f64>> {
        let position = self.unbounded_position(point);
        let inside = (0.0..=as_float(self.columns)).contains(&position.x)
            && (0.0..=as_float(self.rows)).contains(&position.y);
        inside.then_some(position)
    }

    /// Columns and rows of a point that may lie outside the raster.
    pub(super) fn unbounded_position(&self, point: Coord<f64>) -> Coord<f64> {
        let [column, column_x, column_y, row, row_x, row_y] = self.inverse;
        Coord {
            x: column + column_x * point.x + column_y * point.y,
            y: row + row_x * point.x + row_y * point.y,
        }
    }

    /// The coordinates of a cell's centre.
    pub(super) fn centre(&self, column: usize, row: usize) -> Coord<f64> {
        self.point(as_float(column) + 0.5, as_float(row) + 0.5)
    }

    /// The middle of the raster.
    pub(super) fn middle(&self) -> Coord<f64> {
        self.point(0.5 * as_float(self.columns), 0.5 * as_float(self.rows))
    }

    /// The box that holds the raster.
    pub(super) fn bounds(&self) -> Rect<f64> {
        let (columns, rows) = (as_float(self.columns), as_float(self.rows));
        let corners = [(0.0, 0.0), (columns, 0.0), (0.0, rows), (columns, rows)]
            .map(|(column, row)| self.point(column, row));
        let fold = |start: f64, pick: fn(f64, f64) -> f64, read: fn(&Coord<f64>) -> f64| {
            corners.iter().map(read).fold(start, pick)
        };
        Rect::new(
            Coord {
                x: fold(f64::INFINITY, f64::min, |corner| corner.x),
                y: fold(f64::INFINITY, f64::min, |corner| corner.y),
            },
            Coord {
                x: fold(f64::NEG_INFINITY, f64::max, |corner| corner.x),
                y: fold(f64::NEG_INFINITY, f64::max, |corner| corner.y),
            },
        )
    }

    fn point(&self, column: f64, row: f64) -> Coord<f64> {
        let [x, column_x, row_x, y, column_y, row_y] = self.forward;
        Coord {
            x: x + column_x * column + row_x * row,
            y: y + column_y * column + row_y * row,
        }
    }
}

/// A share smaller than this is rounding of the transform, not a neighbour that counts.
const NO_SHARE: f64 = 1e-7;

/// The cells that `position` (from the outer edge) lies between, among `count`.
pub(super) fn between(position: f64, count: usize) -> Between {
    let last = count.saturating_sub(1);
    let centred = position - 0.5;
    let at_rim = centred < 0.0 || centred > as_float(last);
    let clamped = centred.clamp(0.0, as_float(last));
    let first = as_index(clamped).min(last);
    let mut share = clamped - as_float(first);
    if share < NO_SHARE {
        share = 0.0;
    } else if share > 1.0 - NO_SHARE {
        share = 1.0;
    }
    Between {
        first,
        second: (first + 1).min(last),
        share,
        at_rim,
    }
}

/// Rasters have fewer than 2³¹ columns: the conversion is exact.
#[allow(clippy::cast_precision_loss)]
pub(super) const fn as_float(index: usize) -> f64 {
    index as f64
}

/// The whole part of a number that is not negative as an index; the conversion saturates.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub(super) const fn as_index(whole: f64) -> usize {
    whole as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_turned_grid_reads_back() {
        let grid = Grid::new(40, 30, [500.0, 0.8, 0.6, 900.0, 0.6, -0.8]).unwrap();
        let position = grid.position(grid.centre(17, 23)).unwrap();
        assert!((position.x - 17.5).abs() < 1e-9 && (position.y - 23.5).abs() < 1e-9);
        assert!((grid.cell_side() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_flat_transform_is_no_grid() {
        assert!(Grid::new(4, 4, [0.0, 1.0, 1.0, 0.0, 1.0, 1.0]).is_none());
        assert!(Grid::new(4, 4, [f64::NAN, 1.0, 0.0, 0.0, 0.0, 1.0]).is_none());
    }

    #[test]
    fn the_outer_half_cell_is_the_rim() {
        assert!(between(0.2, 10).at_rim);
        assert!(between(9.9, 10).at_rim);
        let inner = between(3.75, 10);
        assert_eq!((inner.first, inner.second, inner.at_rim), (3, 4, false));
        assert!((inner.share - 0.25).abs() < 1e-12);
        let single = between(0.7, 1);
        assert_eq!((single.first, single.second), (0, 0));
    }
}
