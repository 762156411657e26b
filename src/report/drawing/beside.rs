//! Labels in a column beside a drawing, each tied to the height that it is about.

use super::lettering::{BOLD, fitted, spread};
use super::sheet::{Anchor, Sheet};

/// From one line of a label to the next, and the size of its letters, in pixels.
const LINE: f64 = 14.0;
const SIZE: f64 = 12.0;

/// Where the thing lies that a label is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Seat {
    /// At a height on the sheet.
    At(f64),
    /// Above what is drawn.
    Above,
    /// Below what is drawn.
    Below,
}

/// A label of one or more lines; the first is its name.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Label {
    pub(super) seat: Seat,
    pub(super) lines: Vec<String>,
}

/// A column of labels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Column {
    /// Where the drawing ends and leaders begin.
    pub(super) edge: f64,
    /// Where texts begin, or end to the left of a drawing.
    pub(super) text: f64,
    /// Room for a line of text.
    pub(super) room: f64,
    /// Top and bottom of the drawing.
    pub(super) between: (f64, f64),
}

/// The height that labels take one above the other.
#[allow(clippy::cast_precision_loss)] // as many as a drawing has labels
pub(super) fn height_of(labels: &[Label]) -> f64 {
    apart(labels) * labels.len() as f64
}

#[allow(clippy::cast_precision_loss)] // a few lines
fn apart(labels: &[Label]) -> f64 {
    let lines = labels.iter().map(|label| label.lines.len()).max();
    lines.unwrap_or(1) as f64 * LINE + 4.0
}

impl Column {
    /// Draws labels that are given from the highest to the lowest.
    pub(super) fn draw(self, sheet: &mut Sheet, labels: &[Label]) {
        let (top, bottom) = self.between;
        let wanted: Vec<f64> = labels
            .iter()
            .map(|label| match label.seat {
                Seat::At(height) => height,
                Seat::Above => top,
                Seat::Below => bottom,
            })
            .collect();
        let half = apart(labels) / 2.0;
        let places = spread(&wanted, 2.0 * half, (top + half, bottom - half));
        for (label, place) in labels.iter().zip(places) {
            self.leader(sheet, label.seat, place);
            self.lines(sheet, &label.lines, place);
        }
    }

    fn leader(self, sheet: &mut Sheet, seat: Seat, place: f64) {
        let out = if self.text > self.edge { 1.0 } else { -1.0 };
        let near = self.text - 4.0 * out;
        let arrow = |sheet: &mut Sheet, up: f64| {
            let middle = near - 5.0 * out;
            let tip = (middle, place - 6.0 * up);
            let foot = place + 4.0 * up;
            sheet.polygon("arrow", &[tip, (middle - 4.0, foot), (middle + 4.0, foot)]);
        };
        match seat {
            Seat::At(height) => {
                let knee = self.edge + 4.0 * out;
                let points = [(self.edge, height), (knee, height), (near, place)];
                sheet.polyline("leader", &points);
            }
            Seat::Above => arrow(sheet, 1.0),
            Seat::Below => arrow(sheet, -1.0),
        }
    }

    #[allow(clippy::cast_precision_loss)] // a few lines
    fn lines(self, sheet: &mut Sheet, lines: &[String], place: f64) {
        let anchor = if self.text > self.edge {
            Anchor::Start
        } else {
            Anchor::End
        };
        let first = place - (lines.len() as f64 - 1.0) * LINE / 2.0 + 4.0;
        for (number, line) in lines.iter().enumerate() {
            let (look, size) = if number == 0 && lines.len() > 1 {
                ("small strong", SIZE * BOLD)
            } else {
                ("small", SIZE)
            };
            let at = (self.text, first + number as f64 * LINE);
            sheet.text(look, at, anchor, &fitted(line, size, self.room));
        }
    }
}
