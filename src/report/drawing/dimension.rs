//! Dimension lines: how long something is, between two strokes.

use super::sheet::{Anchor, Point, Sheet};

/// Half the length of the strokes at the ends.
const STROKE: f64 = 4.0;

impl Sheet {
    /// A dimension between two places on one level, its text above the line.
    pub(in crate::report) fn dimension_across(&mut self, from: Point, to_x: f64, text: &str) {
        let (left, y) = from;
        self.group("dimension", |sheet| {
            sheet.line("measure", (left, y), (to_x, y));
            for x in [left, to_x] {
                sheet.line("measure", (x, y - STROKE), (x, y + STROKE));
            }
            let middle = f64::midpoint(left, to_x);
            sheet.text("small", (middle, y - 5.0), Anchor::Middle, text);
        });
    }
}
