//! The wall with its opening, and the ground before it.

use super::frame::{Frame, LEFT, RIGHT, TOP};
use super::front::Front;
use super::subject::{Level, Subject};
use crate::report::drawing::sheet::Sheet;

/// Up to where the opening reaches: its head, or beyond the upper edge.
fn head(subject: &Subject<'_>, frame: &Frame) -> f64 {
    match subject.head {
        Some(head) => frame.up(head.value).max(TOP - 10.0),
        None => TOP - 10.0,
    }
}

pub(super) fn draw(sheet: &mut Sheet, subject: &Subject<'_>, front: &Front, frame: &Frame) {
    let (left, right) = (frame.across(0.0), frame.across(front.length));
    let (sill, bottom) = (frame.up(0.0), frame.bottom());
    let around = (RIGHT - LEFT + 20.0, bottom - TOP + 20.0);
    sheet.rectangle("wall", (LEFT - 10.0, TOP - 10.0), around);
    // A barrier around corners stands before the wall, which is cut only where it ends.
    let top = if subject.legs.is_empty() {
        head(subject, frame)
    } else {
        TOP - 10.0
    };
    let look = if front.is_stated { "gap" } else { "gap unsure" };
    sheet.rectangle(look, (left, top), (right - left, sill - top));
    ground(sheet, subject, (left, right), frame);
}

fn ground(sheet: &mut Sheet, subject: &Subject<'_>, opening: (f64, f64), frame: &Frame) {
    let Some(height) = subject.height_of(Level::Ground) else {
        return;
    };
    let at = frame.up(height.value).max(TOP - 10.0);
    let depth = frame.bottom() - at + 10.0;
    if depth <= 0.0 {
        return;
    }
    let (left, right) = opening;
    if height.value <= 0.0 {
        sheet.rectangle("ground", (LEFT, at), (RIGHT - LEFT, depth));
        sheet.line("ground-line", (LEFT, at), (RIGHT, at));
        return;
    }
    // Of an opening below the ground the ground before it is left away.
    for (from, to) in [(LEFT, left), (right, RIGHT)] {
        sheet.rectangle("ground", (from, at), (to - from, depth));
        sheet.line("ground-line", (from, at), (to, at));
    }
    sheet.line("ground-line hidden", (left, at), (right, at));
}

/// The break lines: above, where an opening goes on, and across a part that is left out.
pub(super) fn cut_off(sheet: &mut Sheet, subject: &Subject<'_>, front: &Front, frame: &Frame) {
    let (left, right) = (frame.across(0.0), frame.across(front.length));
    if head(subject, frame) < TOP && subject.legs.is_empty() {
        let line = zigzag((left - 6.0, TOP + 5.0), (right + 6.0, TOP + 5.0));
        let mut above = line.clone();
        above.extend([(right + 6.0, TOP - 5.0), (left - 6.0, TOP - 5.0)]);
        sheet.polygon("paper", &above);
        sheet.polyline("break", &line);
    }
    if let Some((from, to)) = frame.left_out {
        let (from, to) = (frame.across(from) + 2.0, frame.across(to) - 2.0);
        let bottom = frame.bottom();
        let (near, far) = (
            zigzag((from, TOP), (from, bottom)),
            zigzag((to, TOP), (to, bottom)),
        );
        let strip: Vec<_> = near.iter().chain(far.iter().rev()).copied().collect();
        sheet.polygon("paper", &strip);
        sheet.polyline("break", &near);
        sheet.polyline("break", &far);
    }
}

/// A straight line with a kink in every 40 pixels or so.
fn zigzag(from: (f64, f64), to: (f64, f64)) -> Vec<(f64, f64)> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = dx.hypot(dy).max(1.0);
    let kinks = (length / 60.0).ceil();
    let at = |along: f64, aside: f64| {
        let share = along / length;
        (
            from.0 + dx * share - dy / length * aside,
            from.1 + dy * share + dx / length * aside,
        )
    };
    let mut points = vec![from];
    let each = length / kinks;
    let mut middle = each / 2.0;
    while middle < length {
        points.extend([
            at(middle - 4.0, 0.0),
            at(middle - 1.5, 4.0),
            at(middle + 1.5, -4.0),
            at(middle + 4.0, 0.0),
        ]);
        middle += each;
    }
    points.push(to);
    points
}
