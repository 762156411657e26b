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

    /// A dimension between two heights, its text beside the line: to the right with
    /// [`Anchor::Start`], to the left with [`Anchor::End`].
    pub(in crate::report) fn dimension_up(
        &mut self,
        bottom: Point,
        top_y: f64,
        side: Anchor,
        text: &str,
    ) {
        let (x, low) = bottom;
        let beside = match side {
            Anchor::Start => x + 7.0,
            Anchor::Middle => x,
            Anchor::End => x - 7.0,
        };
        self.group("dimension", |sheet| {
            sheet.line("measure", (x, low), (x, top_y));
            for y in [low, top_y] {
                sheet.line("measure", (x - STROKE, y), (x + STROKE, y));
            }
            let middle = f64::midpoint(low, top_y) + 4.0;
            sheet.text("small", (beside, middle), side, text);
        });
    }
}
