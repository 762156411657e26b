//! The paper of a drawing.

use svg::node::element::{
    Circle, ClipPath, Description, Group, Image, Line, Path, Rectangle, SVG, Text, Title,
};
use svg::node::{Node, Text as Words};

use super::nice::pixels;

/// The look of every class that a sheet uses.
pub(in crate::report) const DRAWING_STYLE: &str =
    concat!(include_str!("drawing.css"), include_str!("map.css"));

/// A place on the sheet in pixels, from the left and from the top.
pub(in crate::report) type Point = (f64, f64);

/// Where a text stands beside its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A drawing under way. Marks lie over those made before; each has the look of a class of
/// `drawing.css`.
pub(in crate::report) struct Sheet {
    pub(super) id: String,
    svg: SVG,
    /// Groups that are open, the innermost last.
    groups: Vec<Group>,
}

impl Sheet {
    /// An empty sheet. `id` is unlike that of every other drawing of the page; `title` names
    /// what is drawn, `description` tells it to those who do not see it.
    pub(in crate::report) fn new(
        id: &str,
        (width, height): (f64, f64),
        title: &str,
        description: &str,
    ) -> Self {
        let (name, told) = (format!("{id}-title"), format!("{id}-text"));
        let svg = SVG::new()
            .set(
                "viewBox",
                format!("0 0 {} {}", pixels(width), pixels(height)),
            )
            .set("class", "drawing")
            .set("role", "img")
            .set("aria-labelledby", format!("{name} {told}"))
            .add(Title::new(title).set("id", name))
            .add(
                Description::new()
                    .set("id", told)
                    .add(Words::new(description)),
            );
        Self {
            id: id.to_owned(),
            svg,
            groups: Vec::new(),
        }
    }

    /// A rectangle by its upper left corner, width and height.
    pub(in crate::report) fn rectangle(&mut self, class: &str, at: Point, size: (f64, f64)) {
        let rectangle = Rectangle::new()
            .set("class", class)
            .set("x", pixels(at.0))
            .set("y", pixels(at.1))
            .set("width", pixels(size.0.max(0.0)))
            .set("height", pixels(size.1.max(0.0)));
        self.add(rectangle);
    }

    /// A straight line.
    pub(in crate::report) fn line(&mut self, class: &str, from: Point, to: Point) {
        let line = Line::new()
            .set("class", class)
            .set("x1", pixels(from.0))
            .set("y1", pixels(from.1))
            .set("x2", pixels(to.0))
            .set("y2", pixels(to.1));
        self.add(line);
    }

    /// A line through points.
    pub(in crate::report) fn polyline(&mut self, class: &str, points: &[Point]) {
        self.path(class, &[(points, false)]);
    }

    /// An area within points.
    pub(in crate::report) fn polygon(&mut self, class: &str, points: &[Point]) {
        self.path(class, &[(points, true)]);
    }

    /// Several lines or rings as one mark; a ring within a ring is a hole. `true` closes one.
    pub(in crate::report) fn path(&mut self, class: &str, parts: &[(&[Point], bool)]) {
        let path = outline(parts);
        if !path.is_empty() {
            let element = Path::new().set("class", class).set("d", path);
            self.add(element);
        }
    }

    /// A circle about its middle.
    pub(in crate::report) fn circle(&mut self, class: &str, middle: Point, radius: f64) {
        let circle = Circle::new()
            .set("class", class)
            .set("cx", pixels(middle.0))
            .set("cy", pixels(middle.1))
            .set("r", pixels(radius));
        self.add(circle);
    }

    /// A text on its baseline.
    pub(in crate::report) fn text(&mut self, class: &str, at: Point, anchor: Anchor, text: &str) {
        self.add(lettering(class, at, anchor, text));
    }

    /// A text that reads upward.
    pub(in crate::report) fn text_upward(
        &mut self,
        class: &str,
        at: Point,
        anchor: Anchor,
        text: &str,
    ) {
        let turned = format!("rotate(-90 {} {})", pixels(at.0), pixels(at.1));
        self.add(lettering(class, at, anchor, text).set("transform", turned));
    }

    /// A picture that the sheet carries within itself; `href` is a `data:` address.
    pub(in crate::report) fn image(&mut self, href: &str, at: Point, size: (f64, f64)) {
        let image = Image::new()
            .set("href", href)
            .set("x", pixels(at.0))
            .set("y", pixels(at.1))
            .set("width", pixels(size.0))
            .set("height", pixels(size.1))
            .set("preserveAspectRatio", "none");
        self.add(image);
    }

    /// What `draw` marks, in one group.
    pub(in crate::report) fn group(&mut self, class: &str, draw: impl FnOnce(&mut Self)) {
        self.within(Group::new().set("class", class), draw);
    }

    /// What `draw` marks, cut off at a rectangle; `name` is unlike that of other frames of the
    /// sheet.
    pub(in crate::report) fn clipped(
        &mut self,
        name: &str,
        at: Point,
        size: (f64, f64),
        draw: impl FnOnce(&mut Self),
    ) {
        let id = format!("{}-{name}", self.id);
        let frame = Rectangle::new()
            .set("x", pixels(at.0))
            .set("y", pixels(at.1))
            .set("width", pixels(size.0))
            .set("height", pixels(size.1));
        self.add(ClipPath::new().set("id", id.as_str()).add(frame));
        self.within(Group::new().set("clip-path", format!("url(#{id})")), draw);
    }

    /// The drawing as an `<svg>` element for a page that has [`DRAWING_STYLE`].
    pub(in crate::report) fn finish(self) -> String {
        self.svg.to_string()
    }

    fn within(&mut self, group: Group, draw: impl FnOnce(&mut Self)) {
        self.groups.push(group);
        draw(self);
        if let Some(group) = self.groups.pop() {
            self.add(group);
        }
    }

    pub(super) fn add(&mut self, node: impl Into<Box<dyn Node>>) {
        match self.groups.last_mut() {
            Some(group) => group.append(node),
            None => self.svg.append(node),
        }
    }
}

/// What a path draws: `true` closes a part.
pub(super) fn outline(parts: &[(&[Point], bool)]) -> String {
    let mut path = String::new();
    for (points, closed) in parts {
        for (position, (x, y)) in points.iter().enumerate() {
            path.push(if position == 0 { 'M' } else { 'L' });
            path.push_str(&pixels(*x));
            path.push(' ');
            path.push_str(&pixels(*y));
        }
        if *closed {
            path.push('Z');
        }
    }
    path
}

fn lettering(class: &str, at: Point, anchor: Anchor, text: &str) -> Text {
    Text::new(text)
        .set("class", class)
        .set("x", pixels(at.0))
        .set("y", pixels(at.1))
        .set("text-anchor", anchor.word())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_users_wrote_is_escaped() {
        let hostile = "</text><script>alert(1)</script>";
        let mut sheet = Sheet::new("one", (10.0, 10.0), hostile, hostile);
        sheet.text("name", (1.0, 2.0), Anchor::Start, hostile);
        let drawn = sheet.finish();
        assert!(!drawn.contains("<script"), "{drawn}");
        assert_eq!(drawn.matches("&lt;script&gt;").count(), 3, "{drawn}");
    }

    #[test]
    fn marks_lie_in_their_group_with_short_numbers() {
        let mut sheet = Sheet::new("one", (20.0, 10.5), "A title", "A description");
        sheet.clipped("frame", (0.0, 0.0), (5.0, 5.0), |sheet| {
            sheet.polygon("water", &[(0.0, 0.0), (1.234_567, 0.0), (1.0, 2.0)]);
        });
        sheet.line("edge", (0.0, 0.0), (20.0, -0.01));
        assert_eq!(
            sheet.finish(),
            r#"<svg aria-labelledby="one-title one-text" class="drawing" role="img" viewBox="0 0 20 10.5" xmlns="http://www.w3.org/2000/svg">
<title id="one-title">A title</title>
<desc id="one-text">A description</desc>
<clipPath id="one-frame">
<rect height="5" width="5" x="0" y="0"/>
</clipPath>
<g clip-path="url(#one-frame)">
<path class="water" d="M0 0L1.2 0L1 2Z"/>
</g>
<line class="edge" x1="0" x2="20" y1="0" y2="0"/>
</svg>"#
        );
    }
}
