//! One zone's area, ready to be asked for points.

use std::cell::OnceCell;

use geo::algorithm::indexed::IntervalTreeMultiPolygon;
use geo::algorithm::orient::{Direction, Orient};
use geo::{BoundingRect, Contains, Coord, Line, LinesIter, MultiPolygon, Rect};
use rstar::{AABB, RTree};

use crate::crs::LocalFrame;

/// An area with its trees, which are built when it is first asked.
pub(super) struct ZonePolygon {
    area: MultiPolygon<f64>,
    bounds: Rect<f64>,
    inside: OnceCell<IntervalTreeMultiPolygon<f64>>,
    edges: OnceCell<RTree<Line<f64>>>,
}

/// A point nearer to an edge than this lies on it, metres. Layers are stored to about a
/// centimetre, and a transformation there and back moves a point by less.
pub(super) const EDGE_METRES: f64 = 0.001;

impl ZonePolygon {
    /// `None` where the area has no extent.
    pub(super) fn new(area: &MultiPolygon<f64>) -> Option<Self> {
        // The interval tree takes a hole that is wound as its shell for solid ground.
        let area = area.orient(Direction::Default);
        let bounds = area.bounding_rect()?;
        Some(Self {
            area,
            bounds,
            inside: OnceCell::new(),
            edges: OnceCell::new(),
        })
    }

    pub(super) fn area(&self) -> &MultiPolygon<f64> {
        &self.area
    }

    pub(super) fn bounds(&self) -> Rect<f64> {
        self.bounds
    }

    pub(super) fn contains(&self, point: Coord<f64>) -> bool {
        self.inside
            .get_or_init(|| IntervalTreeMultiPolygon::new(&self.area))
            .contains(&point)
    }

    /// Whether the place of a frame lies on an edge; `near` is a box around it that is
    /// wider than the tolerance.
    pub(super) fn is_on_edge(&self, frame: &LocalFrame, near: Rect<f64>) -> bool {
        let edges = self
            .edges
            .get_or_init(|| RTree::bulk_load(self.area.lines_iter().collect()));
        let near = AABB::from_corners(near.min().into(), near.max().into());
        edges
            .locate_in_envelope_intersecting(&near)
            .any(|edge| distance(frame.metres(edge.start), frame.metres(edge.end)) <= EDGE_METRES)
    }
}

/// Distance of the origin to a segment.
fn distance(start: Coord<f64>, end: Coord<f64>) -> f64 {
    let along = end - start;
    let square = along.x * along.x + along.y * along.y;
    let share = if square > 0.0 {
        (-(start.x * along.x + start.y * along.y) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let foot = start + along * share;
    foot.x.hypot(foot.y)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distance_to_a_segment_and_its_ends() {
        let at = |x, y| Coord { x, y };
        assert!((distance(at(-1.0, 2.0), at(5.0, 2.0)) - 2.0).abs() < 1e-12);
        assert!((distance(at(3.0, 4.0), at(9.0, 4.0)) - 5.0).abs() < 1e-12);
        assert!((distance(at(3.0, 4.0), at(3.0, 4.0)) - 5.0).abs() < 1e-12);
    }
}
