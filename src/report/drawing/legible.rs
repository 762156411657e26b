//! Whether a drawing can be read: no text leaves the sheet or lies on another.
#![allow(clippy::unwrap_used, clippy::panic)]

use svg::node::element::tag::Type;
use svg::parser::Event;

use super::lettering::{BOLD, width};

/// A text with the room it takes.
#[derive(Clone, Debug)]
pub(super) struct Written {
    pub(super) text: String,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

/// Panics where a text leaves the sheet or two of them lie on each other.
pub(super) fn assert_legible(name: &str, drawing: &str) {
    let (wide, high) = size(drawing);
    let texts = texts(drawing);
    assert!(!texts.is_empty(), "{name} says nothing");
    for (position, one) in texts.iter().enumerate() {
        let inside = one.left >= 0.0 && one.top >= 0.0 && one.right <= wide && one.bottom <= high;
        assert!(inside, "{name}: {one:?} leaves {wide} by {high}");
        for other in &texts[position + 1..] {
            let apart = one.right <= other.left
                || other.right <= one.left
                || one.bottom <= other.top
                || other.bottom <= one.top;
            assert!(apart, "{name}: {one:?} lies on {other:?}");
        }
    }
}

/// Every text, in the order of drawing.
pub(super) fn texts(drawing: &str) -> Vec<Written> {
    let mut found = Vec::new();
    let mut open: Option<svg::node::Attributes> = None;
    for event in svg::read(drawing).unwrap() {
        match event {
            Event::Tag("text", Type::Start, attributes) => {
                open = Some(attributes);
            }
            Event::Text(text) => {
                if let Some(attributes) = open.take() {
                    found.push(written(&attributes, &unescaped(text)));
                }
            }
            Event::Error(error) => panic!("{error}"),
            _ => {}
        }
    }
    found
}

fn written(attributes: &svg::node::Attributes, text: &str) -> Written {
    let number = |name: &str| -> f64 { attributes.get(name).unwrap().parse().unwrap() };
    let (x, y) = (number("x"), number("y"));
    let class = attributes.get("class").unwrap();
    let size = if class.contains("small") { 12.0 } else { 13.0 };
    let bold = if class.contains("strong") { BOLD } else { 1.0 };
    let long = width(text, size * bold);
    let before = match &**attributes.get("text-anchor").unwrap() {
        "start" => 0.0,
        "middle" => long / 2.0,
        _ => long,
    };
    // Letters reach 0.8 of their size over the baseline and 0.2 below it.
    let (up, down) = (size * 0.8, size * 0.2);
    let (left, top, right, bottom) = if attributes.get("transform").is_some() {
        (x - up, y + before - long, x + down, y + before)
    } else {
        (x - before, y - up, x - before + long, y + down)
    };
    Written {
        text: text.to_owned(),
        left,
        top,
        right,
        bottom,
    }
}

fn unescaped(text: &str) -> String {
    let text = text.replace("&lt;", "<").replace("&gt;", ">");
    text.replace("&quot;", "\"").replace("&amp;", "&")
}

/// Width and height of the sheet.
fn size(drawing: &str) -> (f64, f64) {
    let (_, after) = drawing.split_once("viewBox=\"0 0 ").unwrap();
    let (wide, after) = after.split_once(' ').unwrap();
    let (high, _) = after.split_once('"').unwrap();
    (wide.parse().unwrap(), high.parse().unwrap())
}
