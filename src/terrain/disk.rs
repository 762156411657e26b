//! Which cell centres lie within a radius of a place.

use std::ops::Range;

use super::grid::{Grid, as_float, as_index};
use crate::crs::LocalFrame;

/// The cells of a raster whose centres lie within a radius of a place, found row by row.
///
/// In metres around the place the centres are an affine map of column and row, so that those
/// of one row within the radius are one run: its ends are solved for. A centre so near the
/// rim that rounding could decide is looked at itself, as if each had been.
pub(super) struct Disk<'a> {
    grid: &'a Grid,
    frame: &'a LocalFrame,
    radius: f64,
    /// The cells among which it is looked for.
    columns: Range<usize>,
    rows: Range<usize>,
    /// Metres from one centre of a row to the next.
    stride: f64,
    /// Where the row comes nearest to the place, in columns from the first; in the first row,
    /// and by how much it moves from row to row.
    foot: f64,
    foot_step: f64,
    /// How far from the place that is, metres.
    off: f64,
    off_step: f64,
    /// Columns that an end may be wrong by.
    doubt: f64,
    /// Square metres by which a row may seem to miss the disk and does not.
    miss: f64,
}

impl<'a> Disk<'a> {
    /// `columns` and `rows` hold all that can lie within and are not empty.
    pub(super) fn new(
        grid: &'a Grid,
        frame: &'a LocalFrame,
        radius: f64,
        [columns, rows]: [Range<usize>; 2],
    ) -> Self {
        let metres = |column, row| frame.metres(grid.centre(column, row));
        let corner = metres(columns.start, rows.start);
        let along = (metres(columns.end, rows.start) - corner) / as_float(columns.len());
        let down = (metres(columns.start, rows.end) - corner) / as_float(rows.len());
        let stride = along.x.hypot(along.y);
        let foot = |x: f64, y: f64| -(x * along.x + y * along.y) / (stride * stride);
        let off = |x: f64, y: f64| (x * along.y - y * along.x) / stride;
        // Rounding of coordinates, brought to metres; a few times what it can add up to.
        let [column_side, row_side] = grid.sides();
        let metres_per_unit = (stride / column_side).max(down.x.hypot(down.y) / row_side);
        let origin = frame.origin();
        let size = grid.reach() + origin.x.abs() + origin.y.abs();
        let rounding = 64.0 * f64::EPSILON * size * metres_per_unit;
        Self {
            grid,
            frame,
            radius,
            stride,
            foot: foot(corner.x, corner.y),
            foot_step: foot(down.x, down.y),
            off: off(corner.x, corner.y),
            off_step: off(down.x, down.y),
            // Where a row is cut by at least a stride to either side.
            doubt: (2.0 * radius * rounding / stride + rounding) / stride,
            miss: (stride * stride).max(8.0 * radius * rounding),
            columns,
            rows,
        }
    }

    /// The columns of a row whose centres lie within.
    pub(super) fn columns(&self, row: usize) -> Range<usize> {
        let down = as_float(row - self.rows.start);
        let off = self.off + down * self.off_step;
        let room = self.radius * self.radius - off * off;
        if room < -self.miss {
            return 0..0;
        }
        let half = room.max(0.0).sqrt() / self.stride;
        let foot = self.foot + down * self.foot_step;
        let count = self.columns.len();
        let (start, is_start_sure) = self.end(foot - half, count, false);
        let (end, is_end_sure) = self.end(foot + half, count, true);
        let run = self.columns.start + start..self.columns.start + end.max(start);
        if is_start_sure && is_end_sure && room >= self.miss {
            run
        } else {
            self.looked_at(row, run)
        }
    }

    /// How many columns lie before a position (`with` it, or up to it), and whether that is
    /// sure.
    #[inline]
    fn end(&self, position: f64, count: usize, with: bool) -> (usize, bool) {
        if position < 0.0 {
            return (0, position < -self.doubt);
        }
        let last = as_float(count) - 1.0;
        if position > last {
            return (count, position > last + self.doubt);
        }
        let whole = as_index(position);
        let rest = position - as_float(whole);
        let is_sure = rest > self.doubt && rest < 1.0 - self.doubt;
        (whole + usize::from(with || rest > 0.0), is_sure)
    }

    /// A run with its ends looked at.
    #[cold]
    fn looked_at(&self, row: usize, run: Range<usize>) -> Range<usize> {
        let Range { mut start, mut end } = run;
        while start > self.columns.start && self.is_within(start - 1, row) {
            start -= 1;
        }
        while end < self.columns.end && self.is_within(end, row) {
            end += 1;
        }
        while start < end && !self.is_within(start, row) {
            start += 1;
        }
        while start < end && !self.is_within(end - 1, row) {
            end -= 1;
        }
        start..end
    }

    fn is_within(&self, column: usize, row: usize) -> bool {
        let centre = self.frame.metres(self.grid.centre(column, row));
        centre.x.hypot(centre.y) <= self.radius
    }
}
