//! One zone's area, ready to be asked for points.

use std::ops::Range;
use std::sync::OnceLock;

use geo::winding_order::{Winding, WindingOrder};
use geo::{BoundingRect, Coord, LineString, MultiPolygon, Polygon, Rect};

use super::edges::{Edges, winding};
use crate::crs::LocalFrame;

/// The area of a zone: polygons with holes, in the coordinates of its layer.
///
/// Sixteen bytes a corner, and little more for the index of its edges, which is built when the
/// area is first asked for a point.
#[derive(Debug)]
pub struct ZoneArea {
    /// The corners of all rings, one after another. A ring ends with its first corner.
    corners: Box<[Coord<f64>]>,
    /// Where each ring ends among the corners.
    ring_ends: Box<[usize]>,
    /// Where each part (a shell, its holes) ends among the rings.
    part_ends: Box<[usize]>,
    bounds: Rect<f64>,
    edges: OnceLock<Edges>,
}

/// Where a point lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Position {
    Outside,
    Inside,
    /// Within [`EDGE_METRES`] of an edge.
    OnEdge,
}

/// A point nearer to an edge than this lies on it, metres. Layers are stored to about a
/// centimetre, and a transformation there and back moves a point by less.
pub(super) const EDGE_METRES: f64 = 0.001;

impl ZoneArea {
    /// `None` where the area has no extent.
    pub(super) fn new(polygons: &MultiPolygon<f64>) -> Option<Self> {
        let bounds = polygons.bounding_rect()?;
        let rings = || polygons.iter().flat_map(rings_of);
        let mut corners = Vec::with_capacity(rings().map(|(ring, _)| ring.0.len()).sum());
        let mut ring_ends = Vec::with_capacity(rings().count());
        let mut part_ends = Vec::with_capacity(polygons.0.len());
        for polygon in polygons {
            for (ring, winding) in rings_of(polygon) {
                // Layers wind their rings either way, and a hole that is wound as its shell
                // would count as solid ground.
                if ring.winding_order().is_none_or(|found| found == winding) {
                    corners.extend_from_slice(&ring.0);
                } else {
                    corners.extend(ring.0.iter().rev());
                }
                ring_ends.push(corners.len());
            }
            part_ends.push(ring_ends.len());
        }
        Some(Self {
            corners: corners.into_boxed_slice(),
            ring_ends: ring_ends.into_boxed_slice(),
            part_ends: part_ends.into_boxed_slice(),
            bounds,
            edges: OnceLock::new(),
        })
    }

    /// The box around the area.
    #[must_use]
    pub const fn bounds(&self) -> Rect<f64> {
        self.bounds
    }

    /// How many parts the area has, each a shell with its holes.
    #[must_use]
    pub const fn part_count(&self) -> usize {
        self.part_ends.len()
    }

    /// A copy of one part, its shell counter-clockwise, its holes clockwise; `None` where
    /// there are fewer.
    #[must_use]
    pub fn part(&self, number: usize) -> Option<Polygon<f64>> {
        let mut rings = self
            .rings(number)?
            .map(|ring| LineString(self.corners.get(ring).unwrap_or_default().to_vec()));
        let shell = rings.next()?;
        Some(Polygon::new(shell, rings.collect()))
    }

    /// Whether a part holds a point. On an edge it may be either way.
    #[must_use]
    pub fn part_holds(&self, number: usize, point: Coord<f64>) -> bool {
        let edges = self.rings(number).into_iter().flatten().flat_map(|ring| {
            let corners = self.corners.get(ring).unwrap_or_default();
            corners.iter().zip(corners.iter().skip(1))
        });
        edges
            .map(|(start, end)| winding(*start, *end, point))
            .sum::<i32>()
            != 0
    }

    /// A copy of the whole area, wound as [`part`](Self::part).
    #[must_use]
    pub fn to_multi_polygon(&self) -> MultiPolygon<f64> {
        MultiPolygon(
            (0..self.part_count())
                .filter_map(|number| self.part(number))
                .collect(),
        )
    }

    /// Whether the area holds a point. On an edge it may be either way.
    pub(super) fn contains(&self, point: Coord<f64>) -> bool {
        let near = Rect::new(point, point);
        let turns = self.edges().turns(&self.corners, point, near, |_, _| false);
        turns.is_some_and(|turns| turns != 0)
    }

    /// Where the place of a frame lies; `near` is a box around it that is wider than the
    /// tolerance of the edge.
    pub(super) fn position(&self, frame: &LocalFrame, near: Rect<f64>) -> Position {
        let is_on =
            |start, end| meets(start, end, near) && distance(frame, start, end) <= EDGE_METRES;
        match self
            .edges()
            .turns(&self.corners, frame.origin(), near, is_on)
        {
            None => Position::OnEdge,
            Some(0) => Position::Outside,
            Some(_) => Position::Inside,
        }
    }

    fn edges(&self) -> &Edges {
        let rings = || (0..self.ring_ends.len()).map(|ring| self.ring(ring));
        let index = || Edges::new(&self.corners, rings(), self.bounds);
        self.edges.get_or_init(index)
    }

    /// The corners of a ring.
    fn ring(&self, number: usize) -> Range<usize> {
        span(&self.ring_ends, number)
    }

    /// The rings of a part, the shell first.
    fn rings(&self, part: usize) -> Option<impl Iterator<Item = Range<usize>>> {
        self.part_ends.get(part)?;
        Some(span(&self.part_ends, part).map(|ring| self.ring(ring)))
    }
}

/// From the end of the one before to the own end.
fn span(ends: &[usize], number: usize) -> Range<usize> {
    let end = |number: usize| ends.get(number).copied().unwrap_or_default();
    number.checked_sub(1).map_or(0, end)..end(number)
}

/// The rings of a polygon with the way in which they are to be wound.
fn rings_of(polygon: &Polygon<f64>) -> impl Iterator<Item = (&LineString<f64>, WindingOrder)> {
    let holes = polygon.interiors().iter();
    std::iter::once((polygon.exterior(), WindingOrder::CounterClockwise))
        .chain(holes.map(|hole| (hole, WindingOrder::Clockwise)))
}

/// Whether the box of an edge meets another.
fn meets(start: Coord<f64>, end: Coord<f64>, area: Rect<f64>) -> bool {
    let (low, high) = (area.min(), area.max());
    start.x.min(end.x) <= high.x
        && start.x.max(end.x) >= low.x
        && start.y.min(end.y) <= high.y
        && start.y.max(end.y) >= low.y
}

/// Metres from the place of a frame to an edge.
fn distance(frame: &LocalFrame, start: Coord<f64>, end: Coord<f64>) -> f64 {
    distance_to_origin(frame.metres(start), frame.metres(end))
}

/// Distance of the origin to a segment.
fn distance_to_origin(start: Coord<f64>, end: Coord<f64>) -> f64 {
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
        assert!((distance_to_origin(at(-1.0, 2.0), at(5.0, 2.0)) - 2.0).abs() < 1e-12);
        assert!((distance_to_origin(at(3.0, 4.0), at(9.0, 4.0)) - 5.0).abs() < 1e-12);
        assert!((distance_to_origin(at(3.0, 4.0), at(3.0, 4.0)) - 5.0).abs() < 1e-12);
    }
}
