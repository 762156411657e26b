//! What the drawing cannot show, as sentences below it.

use super::barrier::braces_in_words;
use super::frame::Frame;
use super::front::{Front, Kind};
use super::subject::{Level, Subject};
use crate::quantity::Length;
use crate::quantity::unit::meter;

pub(super) fn remarks(subject: &Subject<'_>, front: &Front, frame: &Frame) -> Vec<String> {
    let units = subject.units;
    let mut remarks: Vec<String> = barrier(subject, front).into_iter().collect();
    remarks.extend(braces_in_words(subject));
    if front.legs.len() > 1 {
        remarks.push(format!(
            "The barrier goes around {}: its legs of {} are drawn unfolded, side by side, to the middle of the corner posts; the opening behind them is not drawn.",
            counted(front.legs.len() - 1, "corner"),
            subject.legs_in_words()
        ));
    }
    if let Some((from, to)) = frame.left_out {
        let length = Length::new::<meter>(to - from);
        remarks.push(format!(
            "Between the two break lines {} of its length is left out.",
            units.dimension(length)
        ));
    }
    if !front.is_stated {
        remarks.push(
            "The width of the opening is not stated: it is drawn with any width, dashed."
                .to_owned(),
        );
    }
    match subject.head {
        None if subject.legs.is_empty() => {
            remarks
                .push("The height of the opening is not stated: it is cut off above.".to_owned());
        }
        Some(head) if head.value > frame.high => {
            let head = units.height(head);
            remarks.push(format!("The opening is {head} high: it is cut off above."));
        }
        _ => {}
    }
    if subject
        .height_of(Level::Ground)
        .is_some_and(|ground| ground.value > 0.0)
    {
        remarks.push(
            "The sill lies below the ground, of which nothing is drawn before the opening."
                .to_owned(),
        );
    }
    remarks.extend(subject.unknown.iter().cloned());
    remarks
}

/// Planks and posts as a sentence; that there is none, where that is known.
pub(super) fn barrier(subject: &Subject<'_>, front: &Front) -> Option<String> {
    let Some(stack) = subject.stack else {
        return subject
            .protection
            .map(|_| "No plank is needed: the sill is not below the design level.".to_owned());
    };
    let units = subject.units;
    let mut parts = vec![format!(
        "{} of {}",
        counted(stack.count as usize, "plank"),
        units.dimension(subject.kit.plank.cover)
    )];
    if let Some(spans) = subject.design.map(|design| &design.legs) {
        if spans.is_empty() {
            parts.push("no room for planks between the posts".to_owned());
        }
        for (number, planned) in spans.iter().enumerate() {
            let leg = if spans.len() > 1 {
                format!("leg {}: ", number + 1)
            } else {
                String::new()
            };
            let spans = &planned.leg.spans;
            if let Some(span) = spans.first() {
                let clear = units.dimension(span.clear);
                parts.push(format!(
                    "{leg}{} of {clear} clear",
                    counted(spans.len(), "span")
                ));
            }
        }
    } else {
        parts.push("no posts and spans are worked out".to_owned());
    }
    for (kind, name) in [
        (Kind::Intermediate, "intermediate post"),
        (Kind::Corner, "corner post"),
    ] {
        let posts: Vec<_> = front
            .posts
            .iter()
            .filter(|post| post.kind == kind)
            .collect();
        if let Some(post) = posts.first() {
            let width = Length::new::<meter>(post.place.1 - post.place.0);
            let width = units.dimension(width);
            parts.push(format!("{} {width} wide", counted(posts.len(), name)));
        }
    }
    parts.extend(front.ends.map(str::to_owned));
    Some(format!("{}.", parts.join("; ")))
}

fn counted(count: usize, noun: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {noun}{plural}")
}
