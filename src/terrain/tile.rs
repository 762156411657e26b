//! One decoded tile.

use std::ops::Range;

use super::grid::Between;
use super::patch::Patch;
use super::values::{Spread, Values};
use super::window::Window;

/// The cells of one tile, as stored; NaN where there is no height.
pub(super) struct Tile {
    window: Window,
    values: Values,
}

impl Tile {
    pub(super) const fn new(window: Window, values: Values) -> Self {
        Self { window, values }
    }

    /// Which cells it has.
    pub(super) const fn window(&self) -> Window {
        self.window
    }

    /// Whether it holds all cells of a rectangle by its first and last.
    #[inline]
    pub(super) const fn holds(&self, first: (usize, usize), last: (usize, usize)) -> bool {
        let window = &self.window;
        first.0 >= window.column
            && first.1 >= window.row
            && last.0 - window.column < window.columns
            && last.1 - window.row < window.rows
    }

    /// The value of a cell that it holds.
    #[inline]
    pub(super) fn value(&self, column: usize, row: usize) -> f64 {
        self.values.get(self.index(column, row))
    }

    /// The values of the four cells that a point lies between, row after row.
    #[inline]
    pub(super) fn corners(&self, column: Between, row: Between) -> [f64; 4] {
        let start = self.index(column.first, row.first);
        let right = column.second - column.first;
        let below = (row.second - row.first) * self.window.columns;
        let places = [start, start + right, start + below, start + below + right];
        match &self.values {
            Values::Single(values) => {
                places.map(|place| values.get(place).map_or(f64::NAN, |value| (*value).into()))
            }
            Values::Double(values) => {
                places.map(|place| values.get(place).copied().unwrap_or(f64::NAN))
            }
        }
    }

    /// Whether a cell of a rectangle that it holds has no value.
    pub(super) fn has_void(&self, columns: &Range<usize>, rows: &Range<usize>) -> bool {
        rows.clone().any(|row| {
            let start = self.index(columns.start, row);
            let run = start..start + columns.len();
            match &self.values {
                Values::Single(values) => values
                    .get(run)
                    .is_none_or(|run| run.iter().any(|value| value.is_nan())),
                Values::Double(values) => values
                    .get(run)
                    .is_none_or(|run| run.iter().any(|value| value.is_nan())),
            }
        })
    }

    /// The cells of a rectangle, where it holds them all in single precision and each has a
    /// value.
    pub(super) fn patch(&self, columns: &Range<usize>, rows: &Range<usize>) -> Option<Patch<'_>> {
        let last = (columns.end.checked_sub(1)?, rows.end.checked_sub(1)?);
        match &self.values {
            Values::Single(values) if self.holds((columns.start, rows.start), last) => {
                let from = values.get(self.index(columns.start, rows.start)..)?;
                Patch::new(from, self.window.columns, columns, rows)
            }
            _ => None,
        }
    }

    /// Adds the cells of a row that it holds to what has been looked at.
    #[inline]
    pub(super) fn survey(&self, row: usize, columns: &Range<usize>, spread: &mut Spread) {
        let start = self.index(columns.start, row);
        self.values.survey(start..start + columns.len(), spread);
    }

    #[inline]
    const fn index(&self, column: usize, row: usize) -> usize {
        (row - self.window.row) * self.window.columns + (column - self.window.column)
    }
}
