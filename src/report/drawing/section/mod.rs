//! The section: ground, sills and levels along a line through the site.

mod frame;
mod ground;
mod levels;
mod sills;
#[cfg(test)]
mod tests;
mod words;

use self::frame::Frame;
use self::sills::Sills;
use super::lettering::{fitted, spread};
use super::sheet::{Anchor, Sheet};
use super::texture::Texture;
use crate::assess::Assessment;
use crate::surroundings::Surroundings;

/// The sheet, pixels.
const SIZE: (f64, f64) = (640.0, 352.0);
/// The plot: left, top, right, bottom.
const LEFT: f64 = 70.0;
const TOP: f64 = 22.0;
const RIGHT: f64 = 430.0;
const BOTTOM: f64 = 256.0;
/// Where labels beside the plot begin.
const BESIDE: f64 = RIGHT + 16.0;
/// Font of labels, and from one to the next.
const FONT: f64 = 12.0;
const ROW: f64 = 15.0;
/// How far a sill's mark reaches to both sides of the site.
const MARK: f64 = 7.0;

/// Draws the section through a site; `None` where the ground is not known along it.
pub(in crate::report) fn section(
    id: &str,
    assessment: &Assessment<'_>,
    surroundings: &Surroundings,
) -> Option<String> {
    let section = surroundings.section.as_ref()?;
    let sills = Sills::of(assessment);
    let frame = Frame::of(assessment, section, &sills)?;
    let title = format!("Section A–A′ through {}", assessment.site.name);
    let description = words::description(assessment, &frame, &sills);
    let mut sheet = Sheet::new(id, SIZE, &title, &description);
    for texture in [Texture::Dots, Texture::Void] {
        sheet.provide_texture(texture);
    }
    let size = (RIGHT - LEFT, BOTTOM - TOP);
    sheet.rectangle("sky", (LEFT, TOP), size);
    let mut shown = ground::Shown::default();
    sheet.clipped("plot", (LEFT, TOP), size, |sheet| {
        levels::band(sheet, &frame, assessment);
        shown = ground::draw(sheet, &frame, section, assessment);
        levels::lines(sheet, &frame, assessment);
        sills::draw(sheet, &frame, &sills);
    });
    axes(&mut sheet, &frame);
    beside(&mut sheet, &frame, assessment, &sills);
    words::below(&mut sheet, &frame, shown, surroundings.zones_were_given());
    Some(sheet.finish())
}

fn axes(sheet: &mut Sheet, frame: &Frame) {
    sheet.rectangle("rim", (LEFT, TOP), (RIGHT - LEFT, BOTTOM - TOP));
    for (number, label) in frame.up.ticks(frame.heights, 26.0) {
        let y = frame.up.at(number);
        sheet.line("measure", (LEFT - 5.0, y), (LEFT, y));
        sheet.text("small", (LEFT - 8.0, y + 4.0), Anchor::End, &label);
    }
    let middle = f64::midpoint(TOP, BOTTOM);
    sheet.text_upward("small", (12.0, middle), Anchor::Middle, &frame.height_unit);
    for (number, label) in frame.along.ticks(frame.distances, 62.0) {
        let x = frame.along.at(number);
        sheet.line("measure", (x, BOTTOM), (x, BOTTOM + 5.0));
        let label = label.trim_start_matches('-');
        sheet.text("small", (x, BOTTOM + 18.0), Anchor::Middle, label);
    }
    let across = f64::midpoint(LEFT, RIGHT);
    let from_site = format!("{} from the site", frame.distance_unit);
    sheet.text("small", (across, BOTTOM + 34.0), Anchor::Middle, &from_site);
    sheet.text("strong", (LEFT, TOP - 7.0), Anchor::Start, "A");
    sheet.text("strong", (RIGHT, TOP - 7.0), Anchor::End, "A′");
    sheet.text(
        "small",
        (frame.site(), TOP - 7.0),
        Anchor::Middle,
        "the site",
    );
    sheet.line("leader", (frame.site(), TOP), (frame.site(), BOTTOM));
}

/// Names and heights beside the plot, each joined with its height by a stroke.
fn beside(sheet: &mut Sheet, frame: &Frame, assessment: &Assessment<'_>, sills: &Sills) {
    let mut labels = levels::labels(frame, assessment);
    labels.extend(sills.labels(frame, assessment.method.units, labels.len()));
    let wanted: Vec<f64> = labels.iter().map(|(y, _)| *y).collect();
    let places = spread(&wanted, ROW, (TOP + 6.0, BOTTOM));
    for ((y, text), place) in labels.iter().zip(places) {
        sheet.line("leader", (RIGHT, *y), (BESIDE - 4.0, place));
        let text = fitted(text, FONT, SIZE.0 - BESIDE - 2.0);
        sheet.text("small", (BESIDE, place + 4.0), Anchor::Start, &text);
    }
}
