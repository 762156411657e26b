//! What the marks of the barrier are, and how long a length is.

use super::frame::Frame;
use super::front::{Front, Kind};
use crate::quantity::UnitSystem;
use crate::quantity::unit::{Length, foot, meter};
use crate::report::drawing::lettering::width;
use crate::report::drawing::nice::{at_most, decimals};
use crate::report::drawing::sheet::{Anchor, Sheet};

pub(super) struct Key {
    units: UnitSystem,
    has_planks: bool,
    has_posts: bool,
    has_folds: bool,
}

impl Key {
    pub(super) fn of(units: UnitSystem, front: &Front) -> Self {
        let mut posts = front.posts.iter().map(|post| post.kind);
        Self {
            units,
            has_planks: !front.spans.is_empty(),
            has_posts: posts.clone().any(|kind| kind != Kind::Perhaps),
            has_folds: posts.any(|kind| kind == Kind::Corner),
        }
    }

    pub(super) fn draw(&self, sheet: &mut Sheet, frame: &Frame, y: f64) {
        self.scale_bar(sheet, frame, y);
        self.marks(sheet, y);
    }

    /// A length in figures, drawn as long as it is.
    fn scale_bar(&self, sheet: &mut Sheet, frame: &Frame, y: f64) {
        let (unit, name) = match self.units {
            UnitSystem::Us => (Length::new::<foot>(1.0), "ft"),
            UnitSystem::Si => (Length::new::<meter>(1.0), "m"),
        };
        let each = unit.value * frame.scale;
        let length = at_most(110.0 / each);
        let digits = decimals(length);
        let right = 632.0;
        let left = right - length * each;
        sheet.line("axis", (left, y), (right, y));
        let middle = f64::midpoint(left, right);
        for x in [left, middle, right] {
            sheet.line("axis", (x, y - 4.0), (x, y + 4.0));
        }
        sheet.rectangle("mark", (left, y - 2.0), (middle - left, 4.0));
        let text = format!("to scale: {length:.digits$} {name}");
        sheet.text("small", (left - 8.0, y + 4.0), Anchor::End, &text);
    }

    fn marks(&self, sheet: &mut Sheet, y: f64) {
        let mut x = 8.0;
        for (shown, look, name) in [
            (self.has_planks, "plank", "plank"),
            (self.has_posts, "post", "post"),
            (self.has_folds, "fold", "fold line"),
        ] {
            if !shown {
                continue;
            }
            if look == "fold" {
                sheet.line(look, (x + 8.0, y - 8.0), (x + 8.0, y + 8.0));
            } else {
                sheet.rectangle(look, (x, y - 5.0), (16.0, 10.0));
            }
            sheet.text("small", (x + 22.0, y + 4.0), Anchor::Start, name);
            x += 22.0 + width(name, 12.0) + 14.0;
        }
    }
}
