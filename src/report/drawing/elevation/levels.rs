//! Levels across the drawing, and what they are.

use super::frame::{Frame, LEFT, RIGHT, TOP, WIDTH};
use super::subject::{Level, Mark, Subject};
use crate::quantity::Length;
use crate::report::drawing::beside::{Column, Label, Seat};
use crate::report::drawing::sheet::Sheet;

/// The water with its band, and a line at each level but the ground, which the wall draws.
pub(super) fn draw(sheet: &mut Sheet, subject: &Subject<'_>, frame: &Frame) {
    let across = RIGHT - LEFT;
    for mark in &subject.marks {
        let at = frame.up(mark.height.value);
        if mark.level == Level::Flood {
            let depth = (frame.bottom() - at.max(TOP)).max(0.0);
            sheet.rectangle("water", (LEFT, at.max(TOP)), (across, depth));
            if let Some(band) = mark.band {
                let half = band.value * frame.scale;
                sheet.rectangle("band", (LEFT, at - half), (across, 2.0 * half));
                for edge in [at - half, at + half] {
                    sheet.line("band-edge", (LEFT, edge), (RIGHT, edge));
                }
            }
        }
    }
    for mark in &subject.marks {
        let look = match mark.level {
            Level::Sill => "sill-level",
            Level::Flood => "flood-level",
            Level::Design => "design-level",
            Level::Top | Level::Ground => continue,
        };
        let at = frame.up(mark.height.value);
        sheet.line(look, (LEFT, at), (RIGHT, at));
    }
}

/// The labels to the right of the drawing.
pub(super) fn label(sheet: &mut Sheet, subject: &Subject<'_>, frame: &Frame) {
    let column = Column {
        edge: RIGHT,
        text: RIGHT + 20.0,
        room: WIDTH - RIGHT - 24.0,
        between: (TOP, frame.bottom()),
    };
    column.draw(sheet, &levels_in_words(subject, frame));
}

/// Name and value of each level; of one that is not drawn, also how far it is.
pub(super) fn levels_in_words(subject: &Subject<'_>, frame: &Frame) -> Vec<Label> {
    let label = |mark: &Mark| {
        let seat = frame.seat(mark.height.value);
        let mut lines = vec![mark.name.clone(), mark.value.clone()];
        let far = subject.units.height(mark.height.abs());
        match seat {
            Seat::At(_) => {}
            Seat::Above => lines.push(format!("{far} over sill")),
            Seat::Below => lines.push(format!("{far} below sill")),
        }
        Label { seat, lines }
    };
    subject.marks.iter().map(label).collect()
}

/// Heights over the sill, the highest first.
pub(super) fn heights_in_words(subject: &Subject<'_>, frame: &Frame) -> Vec<Label> {
    heights(subject)
        .into_iter()
        .map(|(name, height)| Label {
            seat: frame.seat(height.value),
            lines: vec![format!("{name} {}", subject.units.height(height))],
        })
        .collect()
}

/// What is measured from the sill up, the highest first.
pub(super) fn heights(subject: &Subject<'_>) -> Vec<(&'static str, Length)> {
    let stack = subject.stack.map(|stack| stack.height);
    let mut heights: Vec<(&str, Length)> = [
        ("opening", subject.head),
        ("barrier", stack),
        ("protect", subject.protection),
        ("water", subject.depth),
    ]
    .into_iter()
    .filter_map(|(name, height)| Some((name, height.filter(|height| height.value > 0.0)?)))
    .collect();
    heights.sort_by(|one, other| other.1.value.total_cmp(&one.1.value));
    heights
}
