//! One zone's area, ready to be asked for points.

use std::ops::{ControlFlow, Range};
use std::sync::OnceLock;

use geo::algorithm::kernels::{Kernel, RobustKernel};
use geo::winding_order::{Winding, WindingOrder};
use geo::{BoundingRect, Coord, LineString, MultiPolygon, Orientation, Polygon, Rect};
use sif_itree::ITree;

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
    /// Runs of edges, each by its corners, by the heights that they span, see
    /// [`ZoneArea::height`].
    runs: OnceLock<ITree<u32, Range<u32>>>,
}

/// Edges of a ring that follow each other and stand in the index as one: they lie close
/// together, so that looking at a few too many costs less than an index sixteen times as large.
const RUN_EDGES: usize = 16;

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
            runs: OnceLock::new(),
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
        let mut turns = 0;
        self.across(point.y, point.y, |start, end| {
            turns += winding(start, end, point);
            ControlFlow::Continue(())
        });
        turns != 0
    }

    /// Where the place of a frame lies; `near` is a box around it that is wider than the
    /// tolerance of the edge.
    pub(super) fn position(&self, frame: &LocalFrame, near: Rect<f64>) -> Position {
        let point = frame.origin();
        let mut turns = 0;
        let mut position = Position::Outside;
        self.across(near.min().y, near.max().y, |start, end| {
            if meets(start, end, near) && distance(frame, start, end) <= EDGE_METRES {
                position = Position::OnEdge;
                return ControlFlow::Break(());
            }
            turns += winding(start, end, point);
            ControlFlow::Continue(())
        });
        match position {
            Position::Outside if turns != 0 => Position::Inside,
            other => other,
        }
    }

    /// Hands over every edge that reaches into the heights from `low` to `high`, and some
    /// close to them.
    fn across(
        &self,
        low: f64,
        high: f64,
        mut visit: impl FnMut(Coord<f64>, Coord<f64>) -> ControlFlow<()>,
    ) {
        let runs = self.runs.get_or_init(|| self.index());
        let heights = self.height(low)..=self.height(high);
        let _ = runs.query(heights, |(_, run)| {
            for edge in self.corners_of(run).array_windows() {
                let [start, end] = *edge;
                visit(start, end)?;
            }
            ControlFlow::Continue(())
        });
    }

    fn corners_of(&self, run: &Range<u32>) -> &[Coord<f64>] {
        let corners = self.corners.get(run.start as usize..run.end as usize);
        corners.unwrap_or_default()
    }

    fn index(&self) -> ITree<u32, Range<u32>> {
        let rings = (0..self.ring_ends.len()).map(|ring| self.ring(ring));
        ITree::new(rings.flat_map(|ring| {
            let last = ring.end.saturating_sub(1);
            (ring.start..last)
                .step_by(RUN_EDGES)
                .filter_map(move |start| {
                    let end = (start + RUN_EDGES).min(last) + 1;
                    // No reader of GDAL's holds a geometry of more corners than 32 bits count.
                    let run = u32::try_from(start).ok()?..u32::try_from(end).ok()?;
                    let heights = self.corners_of(&run).iter().map(|corner| corner.y);
                    let (low, high) = heights
                        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| {
                            (low.min(y), high.max(y))
                        });
                    Some((self.height(low)..self.height(high), run))
                })
        }))
    }

    /// A northing as a share of the area's height in 2³² steps. Every step of the sum grows
    /// with `y` or stays, so that what overlaps in `y` overlaps here, whatever the rounding.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // beyond: the nearest end
    fn height(&self, y: f64) -> u32 {
        let scale = f64::from(u32::MAX) / (self.bounds.max().y - self.bounds.min().y);
        let share = (y - self.bounds.min().y) * scale;
        share as u32
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

/// What an edge adds to the number of turns of the area's edge around a point: 1 where it
/// passes east of the point northwards, -1 southwards. Of its ends only the lower counts.
///
/// Turns and not crossings: where parts of a careless layer overlap, an even count would say
/// outside.
fn winding(start: Coord<f64>, end: Coord<f64>, point: Coord<f64>) -> i32 {
    let northwards = start.y <= point.y;
    if northwards == (end.y <= point.y) || start.x.max(end.x) < point.x {
        return 0;
    }
    match RobustKernel::orient2d(start, end, point) {
        Orientation::CounterClockwise if northwards => 1,
        Orientation::Clockwise if !northwards => -1,
        _ => 0,
    }
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
