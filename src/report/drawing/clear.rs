//! Labels that keep clear of each other in two dimensions.

use super::lettering::width;
use super::sheet::Point;

/// A rectangle of the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::report) struct Area {
    pub(in crate::report) left: f64,
    pub(in crate::report) top: f64,
    pub(in crate::report) right: f64,
    pub(in crate::report) bottom: f64,
}

impl Area {
    /// The rectangle about a middle.
    pub(in crate::report) fn about((x, y): Point, wide: f64, high: f64) -> Self {
        Self {
            left: x - wide / 2.0,
            top: y - high / 2.0,
            right: x + wide / 2.0,
            bottom: y + high / 2.0,
        }
    }

    fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    fn holds(&self, other: &Self) -> bool {
        self.left <= other.left
            && self.top <= other.top
            && self.right >= other.right
            && self.bottom >= other.bottom
    }
}

/// What is still free within a frame.
pub(in crate::report) struct Clearing {
    frame: Area,
    taken: Vec<Area>,
}

impl Clearing {
    pub(in crate::report) const fn new(frame: Area) -> Self {
        Self {
            frame,
            taken: Vec::new(),
        }
    }

    /// Keeps an area clear of what comes later.
    pub(in crate::report) fn keep(&mut self, area: Area) {
        self.taken.push(area);
    }

    /// Takes the first of some middles about which a rectangle is free; `None` where none is.
    pub(in crate::report) fn take(
        &mut self,
        middles: impl IntoIterator<Item = Point>,
        (wide, high): (f64, f64),
    ) -> Option<Point> {
        let mut middles = middles.into_iter();
        let middle = middles.find(|middle| {
            let area = Area::about(*middle, wide, high);
            self.frame.holds(&area) && !self.taken.iter().any(|taken| taken.meets(&area))
        })?;
        self.keep(Area::about(middle, wide, high));
        Some(middle)
    }

    /// As [`take`](Self::take), for a text of a font size: comes back with the middle of its
    /// baseline.
    pub(in crate::report) fn take_text(
        &mut self,
        middles: impl IntoIterator<Item = Point>,
        text: &str,
        size: f64,
    ) -> Option<Point> {
        let (x, y) = self.take(middles, (width(text, size) + 4.0, size + 4.0))?;
        Some((x, y + 0.35 * size))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_free_place_is_taken() {
        let frame = Area {
            left: 0.0,
            top: 0.0,
            right: 100.0,
            bottom: 100.0,
        };
        let mut clearing = Clearing::new(frame);
        let middles = [(2.0, 50.0), (50.0, 50.0), (50.0, 80.0)];
        // The first one would leave the frame.
        assert_eq!(clearing.take(middles, (20.0, 10.0)), Some((50.0, 50.0)));
        assert_eq!(clearing.take(middles, (20.0, 10.0)), Some((50.0, 80.0)));
        assert_eq!(clearing.take(middles, (20.0, 10.0)), None);
    }
}
