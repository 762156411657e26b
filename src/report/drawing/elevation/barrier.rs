//! Planks, posts and braces before the opening.

use super::frame::Frame;
use super::front::{Front, Kind};
use super::subject::Subject;
use crate::barrier::{Open, UprightDesign};
use crate::report::drawing::sheet::{Point, Sheet};
use crate::site::BraceSide;

/// Below this height in pixels the joints of planks are drawn with hairlines.
const FINE: f64 = 4.0;

pub(super) fn draw(sheet: &mut Sheet, subject: &Subject<'_>, front: &Front, frame: &Frame) {
    let Some(stack) = subject.stack else { return };
    let (top, sill) = (frame.up(stack.height.value), frame.up(0.0));
    for (_, (from, to)) in &front.spans {
        if !frame.shows(*from) && !frame.shows(*to) {
            continue;
        }
        let (left, right) = (frame.across(*from), frame.across(*to));
        sheet.rectangle("plank", (left, top), (right - left, sill - top));
        let rise = (sill - top) / f64::from(stack.count);
        let joints: Vec<[Point; 2]> = (1..stack.count)
            .map(|below| sill - rise * f64::from(below))
            .map(|at| [(left, at), (right, at)])
            .collect();
        let parts: Vec<(&[Point], bool)> = joints.iter().map(|line| (&line[..], false)).collect();
        sheet.path(if rise < FINE { "joint fine" } else { "joint" }, &parts);
    }
    for post in &front.posts {
        let (from, to) = post.place;
        if !frame.shows(f64::midpoint(from, to)) {
            continue;
        }
        let (left, right) = (frame.across(from), frame.across(to));
        let look = if post.kind == Kind::Perhaps {
            "perhaps"
        } else {
            "post"
        };
        sheet.rectangle(look, (left, top), (right - left, sill - top));
        if post.kind == Kind::Corner {
            let fold = f64::midpoint(left, right);
            sheet.line("fold", (fold, top - 12.0), (fold, sill + 12.0));
        }
    }
    braces(sheet, subject, front, frame);
}

/// A brace before each post that has one, from its foot to where it holds the post.
fn braces(sheet: &mut Sheet, subject: &Subject<'_>, front: &Front, frame: &Frame) {
    for post in &front.posts {
        let Some(brace) = braced(subject, post.kind).and_then(|post| post.brace) else {
            continue;
        };
        let middle = f64::midpoint(post.place.0, post.place.1);
        if !frame.shows(middle) {
            continue;
        }
        let (at, foot, held) = (
            frame.across(middle),
            frame.up(0.0),
            frame.up(brace.at.value),
        );
        let look = match brace.side {
            BraceSide::Water => "strut",
            BraceSide::Dry => "strut behind",
        };
        let half = (0.5 * frame.scale * (post.place.1 - post.place.0) - 1.0).clamp(1.5, 3.0);
        sheet.rectangle(look, (at - half, held), (2.0 * half, foot - held));
        sheet.circle("mark", (at, held), 3.0);
    }
}

fn braced<'a>(subject: &Subject<'a>, kind: Kind) -> Option<&'a UprightDesign> {
    use crate::barrier::Upright;
    let role = match kind {
        Kind::Intermediate => Upright::Intermediate,
        Kind::Corner => Upright::Corner,
        Kind::End | Kind::Perhaps => return None,
    };
    let posts = subject.design.map(|design| design.uprights.as_slice());
    posts?
        .iter()
        .find(|post| post.role == role && post.brace.is_some())
}

/// On which side braces stand, as a sentence; `None` without one.
pub(super) fn braces_in_words(subject: &Subject<'_>) -> Option<String> {
    let design = subject.design?;
    let brace = design.uprights.iter().find_map(|post| post.brace)?;
    let side = match brace.side {
        BraceSide::Water => "water side, before the planks",
        BraceSide::Dry => "dry side, dashed behind the planks",
    };
    let planned = if design.open.contains(&Open::BraceSide) {
        "; nobody stated a side, so that it is planned only"
    } else {
        ""
    };
    let held = subject.units.height(brace.at);
    Some(format!(
        "Braces on the {side}, holding their posts {held} over the sill{planned}."
    ))
}
