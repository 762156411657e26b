//! The formulas of the terrain written out cell by cell, over an array in memory: what the
//! library has to agree with to the last bit, however it reads its file.

use std::f64::consts::TAU;

use geo::Coord;
use sillmark::crs::LocalFrame;

/// Stored values with where they lie and how they are read.
pub(crate) struct ByCell {
    pub(crate) columns: usize,
    pub(crate) rows: usize,
    pub(crate) transform: [f64; 6],
    /// Metres, NaN where there is none.
    pub(crate) metres: Vec<f64>,
}

/// A grade: lowest, highest, samples, samples without a value.
pub(crate) type Found = (f64, f64, usize, usize);

/// The two cells of an axis around a position, and the share of the second.
struct Axis {
    first: usize,
    second: usize,
    share: f64,
    at_rim: bool,
}

fn axis(position: f64, count: usize) -> Axis {
    let last = count - 1;
    let centred = position - 0.5;
    let clamped = centred.clamp(0.0, last as f64);
    let first = (clamped.floor() as usize).min(last);
    let mut share = clamped - first as f64;
    if share < 1e-7 {
        share = 0.0;
    } else if share > 1.0 - 1e-7 {
        share = 1.0;
    }
    Axis {
        first,
        second: (first + 1).min(last),
        share,
        at_rim: centred < 0.0 || centred > last as f64,
    }
}

impl ByCell {
    fn axes(&self, point: Coord<f64>) -> Option<(Axis, Axis)> {
        let [x, column_x, row_x, y, column_y, row_y] = self.transform;
        let area = column_x * row_y - row_x * column_y;
        let (along, down) = (
            [(row_x * y - row_y * x) / area, row_y / area, -row_x / area],
            [
                (column_y * x - column_x * y) / area,
                -column_y / area,
                column_x / area,
            ],
        );
        let at = |axis: [f64; 3]| axis[0] + axis[1] * point.x + axis[2] * point.y;
        let (column, row) = (at(along), at(down));
        let inside = (0.0..=self.columns as f64).contains(&column)
            && (0.0..=self.rows as f64).contains(&row);
        inside.then(|| (axis(column, self.columns), axis(row, self.rows)))
    }

    fn cell(&self, column: usize, row: usize) -> f64 {
        self.metres[row * self.columns + column]
    }

    fn between(&self, column: &Axis, row: &Axis) -> f64 {
        let mut sum = 0.0;
        for (y, of_row) in [(row.first, 1.0 - row.share), (row.second, row.share)] {
            for (x, of_column) in [
                (column.first, 1.0 - column.share),
                (column.second, column.share),
            ] {
                let share = of_row * of_column;
                if share > 0.0 {
                    sum += share * self.cell(x, y);
                }
            }
        }
        sum
    }

    /// Metres (NaN in a void), no data nearby, at the rim; `None` outside.
    pub(crate) fn ground(&self, point: Coord<f64>) -> Option<(f64, bool, bool)> {
        let (column, row) = self.axes(point)?;
        let metres = self.between(&column, &row);
        let around = |first: usize, count: usize| first.saturating_sub(1)..(first + 3).min(count);
        let void = around(row.first, self.rows)
            .any(|y| around(column.first, self.columns).any(|x| self.cell(x, y).is_nan()));
        Some((metres, void, column.at_rim || row.at_rim))
    }

    /// Lowest, highest, samples and samples without a value within a radius.
    pub(crate) fn grade(&self, frame: &LocalFrame, radius: f64, cell_size: f64) -> Option<Found> {
        let mut heights = Vec::new();
        let mut look = |point| {
            let axes = self.axes(point);
            heights.push(axes.map_or(f64::NAN, |(column, row)| self.between(&column, &row)));
        };
        look(frame.origin());
        let count = ((TAU * radius / cell_size).ceil() as usize).max(16);
        for index in 0..count {
            let (sine, cosine) = (TAU * index as f64 / count as f64).sin_cos();
            look(frame.at(radius * cosine, radius * sine));
        }
        let [x, column_x, row_x, y, column_y, row_y] = self.transform;
        for row in 0..self.rows {
            for column in 0..self.columns {
                let (across, down) = (column as f64 + 0.5, row as f64 + 0.5);
                let centre = frame.metres(Coord {
                    x: x + column_x * across + row_x * down,
                    y: y + column_y * across + row_y * down,
                });
                if centre.x.hypot(centre.y) <= radius {
                    heights.push(self.cell(column, row));
                }
            }
        }
        let known = || heights.iter().copied().filter(|height| !height.is_nan());
        let without = heights.len() - known().count();
        (known().count() > 0).then(|| {
            (
                known().fold(f64::INFINITY, f64::min),
                known().fold(f64::NEG_INFINITY, f64::max),
                heights.len(),
                without,
            )
        })
    }
}
