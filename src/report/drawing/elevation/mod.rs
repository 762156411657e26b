//! One opening from the water side, to scale: wall, levels, and the barrier before it.

mod barrier;
mod frame;
mod front;
mod key;
mod levels;
mod measures;
mod remarks;
mod subject;
mod told;
mod wall;

#[cfg(test)]
mod tests;

use super::footnotes::Footnotes;
use super::lettering::{BOLD, fitted};
use super::sheet::{Anchor, Sheet};
use crate::assess::{Assessment, OpeningAssessment};
use frame::{Frame, LEFT, RIGHT, TOP, WIDTH};
use front::Front;
use subject::Subject;

/// The elevation of one opening, for a page that has no other drawing of this `id`; `None`
/// where nothing can be drawn, since no sill is known.
///
/// It has one scale up and across. Where that would leave the barrier too small to see, a
/// middle part of a long one is left out and said; levels far from the opening are named with
/// an arrow instead of being drawn.
pub(in crate::report) fn elevation(
    id: &str,
    assessment: &Assessment<'_>,
    opening: &OpeningAssessment<'_>,
) -> Option<String> {
    Subject::of_opening(assessment, opening).map(|subject| draw(id, &subject))
}

fn draw(id: &str, subject: &Subject<'_>) -> String {
    let front = Front::of(subject);
    let frame = Frame::around(subject, &front);
    let rows = measures::Rows::of(subject, &front, &frame);
    let notes = Footnotes::of(&remarks::remarks(subject, &front, &frame));
    let below = frame.bottom() + rows.height();
    let (title, told) = (told::title(subject), told::told(subject, &front));
    let size = (WIDTH, below + notes.height() + 10.0);
    let mut sheet = Sheet::new(id, size, &title, &told);
    let heading = format!("{} from the water side", subject.name);
    let heading = fitted(&heading, 13.0 * BOLD, WIDTH - 16.0);
    sheet.text("strong", (8.0, 20.0), Anchor::Start, &heading);
    let inside = (RIGHT - LEFT, frame.bottom() - TOP);
    sheet.clipped("frame", (LEFT, TOP), inside, |sheet| {
        wall::draw(sheet, subject, &front, &frame);
        barrier::draw(sheet, subject, &front, &frame);
        levels::draw(sheet, subject, &frame);
        wall::cut_off(sheet, subject, &front, &frame);
    });
    levels::label(&mut sheet, subject, &frame);
    measures::heights(&mut sheet, subject, &frame);
    rows.draw(&mut sheet, &frame);
    notes.draw(&mut sheet, 8.0, below);
    sheet.finish()
}
