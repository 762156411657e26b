//! Areas that are told apart by their hatch, also without colour.

use svg::node::element::{Circle, Path, Pattern, Rectangle};

use super::nice::pixels;
use super::sheet::{Point, Sheet};

/// How an area is filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum Hatch {
    /// Lines across.
    Level,
    /// Lines that rise to the right.
    Rising,
    /// Dots.
    Dots,
    /// Lines both ways.
    Crossed,
    /// No lines.
    Plain,
}

impl Hatch {
    /// Name, colour of the ground, and lines of a tile of 8 by 8 pixels.
    const fn look(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Level => ("level", "#d3e5f1", "M0 2H8M0 6H8"),
            Self::Rising => ("rising", "#f6dcc9", "M-2 2L2 -2M0 8L8 0M6 10L10 6"),
            Self::Dots => ("dots", "#ece4d3", ""),
            Self::Crossed => ("crossed", "#efe3ec", "M0 4H8M4 0V8"),
            Self::Plain => ("plain", "#e3e5e7", ""),
        }
    }

    const fn ink(self) -> &'static str {
        match self {
            Self::Level => "#0072b2",
            Self::Rising => "#b34700",
            Self::Dots => "#5c4a2a",
            Self::Crossed => "#7a3d66",
            Self::Plain => "none",
        }
    }
}

impl Sheet {
    /// Makes a hatch known to the sheet: once, before areas have it.
    pub(in crate::report) fn provide(&mut self, hatch: Hatch) {
        let (name, ground, lines) = hatch.look();
        let tile = Rectangle::new()
            .set("width", 8)
            .set("height", 8)
            .set("fill", ground);
        let mut pattern = Pattern::new()
            .set("id", format!("{}-{name}", self.id))
            .set("width", 8)
            .set("height", 8)
            .set("patternUnits", "userSpaceOnUse")
            .add(tile);
        if !lines.is_empty() {
            let lines = Path::new().set("d", lines).set("stroke", hatch.ink());
            pattern = pattern.add(lines.set("fill", "none"));
        }
        if hatch == Hatch::Dots {
            for (x, y) in [(2, 2), (6, 6)] {
                let dot = Circle::new().set("cx", x).set("cy", y).set("r", 1.2);
                pattern = pattern.add(dot.set("fill", hatch.ink()));
            }
        }
        self.add(pattern);
    }

    /// An area within points, with a hatch that was [`provide`](Self::provide)d.
    pub(in crate::report) fn hatched(&mut self, hatch: Hatch, points: &[Point]) {
        let corner = |(x, y): &Point| format!("{} {}", pixels(*x), pixels(*y));
        let corners: Vec<String> = points.iter().map(corner).collect();
        if corners.is_empty() {
            return;
        }
        let path = format!("M{}Z", corners.join("L"));
        let area = Path::new()
            .set("class", "hatched")
            .set("fill", format!("url(#{}-{})", self.id, hatch.look().0))
            .set("d", path);
        self.add(area);
    }
}
