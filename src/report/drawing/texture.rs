//! Fills that let what lies under them be seen, and can be told apart without colour.

use svg::node::element::{Path, Pattern};

use super::sheet::{Point, Sheet, outline};

/// A texture. Its strokes have the class `texture` and one of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::report) enum Texture {
    /// Strokes that rise to the right.
    Rising,
    /// The same, close together.
    RisingDense,
    /// Strokes that fall to the right, broken.
    Falling,
    /// Both ways.
    Crossed,
    /// Level strokes.
    Level,
    /// Upright strokes.
    Upright,
    /// Dots.
    Dots,
    /// Dots far apart.
    DotsFar,
    /// Small crosses.
    Plus,
    /// Grey, close together, falling: nothing is known there.
    Void,
}

impl Texture {
    /// A name within the ids of a page.
    const fn name(self) -> &'static str {
        match self {
            Self::Rising => "rising",
            Self::RisingDense => "rising-dense",
            Self::Falling => "falling",
            Self::Crossed => "crossed",
            Self::Level => "level",
            Self::Upright => "upright",
            Self::Dots => "dots",
            Self::DotsFar => "dots-far",
            Self::Plus => "plus",
            Self::Void => "void",
        }
    }

    /// The side of the square that repeats, pixels, and the strokes in it.
    const fn strokes(self) -> (f64, &'static str) {
        match self {
            Self::Rising => (12.0, "M-3 3L3 -3M0 12L12 0M9 15L15 9"),
            Self::RisingDense => (6.0, "M-1.5 1.5L1.5 -1.5M0 6L6 0M4.5 7.5L7.5 4.5"),
            Self::Falling => (12.0, "M0 0L5 5M7 7L12 12"),
            Self::Crossed => (9.0, "M0 0L9 9M0 9L9 0"),
            Self::Level => (8.0, "M0 4H8"),
            Self::Upright => (8.0, "M4 0V8"),
            Self::Dots => (8.0, "M1.5 2H3M5.5 6H7"),
            Self::DotsFar => (14.0, "M3 4H4.5M10 11H11.5"),
            Self::Plus => (14.0, "M4 7H10M7 4V10"),
            Self::Void => (5.0, "M-1 -1L6 6M-1 4L1 6M4 -1L6 1"),
        }
    }

    fn pattern(self, id: &str) -> Pattern {
        let (side, strokes) = self.strokes();
        let class = format!("texture texture-{}", self.name());
        Pattern::new()
            .set("id", id)
            .set("width", side)
            .set("height", side)
            .set("patternUnits", "userSpaceOnUse")
            .add(Path::new().set("class", class).set("d", strokes))
    }
}

impl Sheet {
    /// Makes a texture known to the sheet: once, before areas have it.
    pub(in crate::report) fn provide_texture(&mut self, texture: Texture) {
        let pattern = texture.pattern(&self.texture_id(texture));
        self.add(pattern);
    }

    /// Areas as those of [`path`](Self::path), with a texture that was
    /// [provided](Self::provide_texture) and a class that has no fill.
    pub(in crate::report) fn textured(
        &mut self,
        class: &str,
        texture: Texture,
        parts: &[(&[Point], bool)],
    ) {
        let path = outline(parts);
        if !path.is_empty() {
            let fill = format!("url(#{})", self.texture_id(texture));
            let area = Path::new().set("class", class).set("d", path);
            self.add(area.set("fill", fill));
        }
    }

    fn texture_id(&self, texture: Texture) -> String {
        format!("{}-{}-texture", self.id, texture.name())
    }
}
