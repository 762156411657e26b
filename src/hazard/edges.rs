//! The edges of an area, found by where they lie.

use std::ops::{ControlFlow, Range};

use geo::algorithm::kernels::{Kernel, RobustKernel};
use geo::{Coord, Orientation, Rect};
use sif_itree::ITree;

/// An index of the edges of rings, by the heights that they span. It knows them by their
/// corners, which whoever asks has at hand.
#[derive(Debug)]
pub(super) struct Edges {
    runs: ITree<u32, Run>,
    /// What heights and breadths are shares of.
    bounds: Rect<f64>,
}

/// Edges that follow each other.
#[derive(Debug)]
struct Run {
    /// By their corners.
    corners: Range<u32>,
    /// What they span across, as shares of the breadth.
    west: u32,
    east: u32,
}

/// Edges of a ring that stand in the index as one run: they lie close together, so that
/// looking at a few too many costs less than an index sixteen times as large.
const RUN_EDGES: usize = 16;

impl Edges {
    /// Of rings by their corners, whose last is the first again; `bounds` holds them all.
    pub(super) fn new(
        corners: &[Coord<f64>],
        rings: impl Iterator<Item = Range<usize>>,
        bounds: Rect<f64>,
    ) -> Self {
        let runs = rings.flat_map(|ring| {
            let last = ring.end.saturating_sub(1);
            (ring.start..last)
                .step_by(RUN_EDGES)
                .filter_map(move |start| {
                    let end = (start + RUN_EDGES).min(last) + 1;
                    // No reader of GDAL's holds a geometry of more corners than 32 bits count.
                    let run = u32::try_from(start).ok()?..u32::try_from(end).ok()?;
                    let [across, up] = spans(corners.get(start..end)?);
                    let heights = height(up.start, bounds)..height(up.end, bounds);
                    let run = Run {
                        corners: run,
                        west: breadth(across.start, bounds),
                        east: breadth(across.end, bounds),
                    };
                    Some((heights, run))
                })
        });
        Self {
            runs: ITree::new(runs),
            bounds,
        }
    }

    /// How often the rings turn around a point; `None` where it `is_on` one of the edges that
    /// may meet `near`, a box around it.
    pub(super) fn turns(
        &self,
        corners: &[Coord<f64>],
        point: Coord<f64>,
        near: Rect<f64>,
        is_on: impl Fn(Coord<f64>, Coord<f64>) -> bool,
    ) -> Option<i32> {
        let (low, high) = (near.min(), near.max());
        let heights = height(low.y, self.bounds)..=height(high.y, self.bounds);
        let (west, east) = (breadth(low.x, self.bounds), breadth(high.x, self.bounds));
        let mut turns = 0;
        let looked = self.runs.query(heights, |(_, run)| {
            let corners = corners.get(run.corners.start as usize..run.corners.end as usize);
            let corners = corners.unwrap_or_default();
            if run.west > east {
                // It lies east of the point as a whole: what turns there and back is nothing.
                if let [first, .., last] = corners {
                    turns += northwards(*first, *last, point);
                }
            } else if run.east >= west {
                for [start, end] in corners.array_windows() {
                    if is_on(*start, *end) {
                        return ControlFlow::Break(());
                    }
                    turns += winding(*start, *end, point);
                }
            }
            ControlFlow::Continue(())
        });
        looked.is_continue().then_some(turns)
    }
}

/// What an edge adds to the number of turns of the area's edge around a point: where it passes
/// east of the point, as [`northwards`].
///
/// Turns and not crossings: where parts of a careless layer overlap, an even count would say
/// outside.
pub(super) fn winding(start: Coord<f64>, end: Coord<f64>, point: Coord<f64>) -> i32 {
    let northwards = northwards(start, end, point);
    if northwards == 0 || start.x.max(end.x) < point.x {
        return 0;
    }
    match RobustKernel::orient2d(start, end, point) {
        Orientation::CounterClockwise if northwards > 0 => 1,
        Orientation::Clockwise if northwards < 0 => -1,
        _ => 0,
    }
}

/// 1 where a way passes the height of a point northwards, -1 southwards, 0 where it ends on
/// the side where it began. Of two ends only the lower counts.
fn northwards(start: Coord<f64>, end: Coord<f64>, point: Coord<f64>) -> i32 {
    i32::from(end.y > point.y) - i32::from(start.y > point.y)
}

/// What corners span across and up.
fn spans(corners: &[Coord<f64>]) -> [Range<f64>; 2] {
    let mut spans = [
        f64::INFINITY..f64::NEG_INFINITY,
        f64::INFINITY..f64::NEG_INFINITY,
    ];
    for corner in corners {
        for (span, number) in spans.iter_mut().zip([corner.x, corner.y]) {
            *span = span.start.min(number)..span.end.max(number);
        }
    }
    spans
}

/// A northing as a share of the height of the bounds.
fn height(y: f64, bounds: Rect<f64>) -> u32 {
    share(y, bounds.min().y, bounds.max().y)
}

/// An easting as a share of the breadth of the bounds.
fn breadth(x: f64, bounds: Rect<f64>) -> u32 {
    share(x, bounds.min().x, bounds.max().x)
}

/// A number as a share of a range in 2³² steps. Every step of the sum grows with the number
/// or stays, so that what overlaps in numbers overlaps here, whatever the rounding.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // beyond: the nearest end
fn share(number: f64, low: f64, high: f64) -> u32 {
    let share = (number - low) * (f64::from(u32::MAX) / (high - low));
    share as u32
}

#[cfg(test)]
mod tests {
    use geo::algorithm::Winding as _;
    use geo::line_string;

    use super::*;

    /// A jagged circle of so many corners, which is far from convex.
    fn star(corners: u32) -> Vec<Coord<f64>> {
        let mut ring: Vec<_> = (0..corners)
            .map(|number| {
                let turn = std::f64::consts::TAU * f64::from(number) / f64::from(corners);
                let reach = if number % 2 == 0 {
                    1.0
                } else {
                    0.4 + 0.5 * (3.0 * turn).sin().abs()
                };
                Coord {
                    x: reach * turn.cos(),
                    y: reach * turn.sin(),
                }
            })
            .collect();
        ring.push(ring[0]);
        ring
    }

    #[test]
    fn runs_turn_as_often_as_their_edges() {
        let corners = star(1001);
        let bounds = Rect::new(Coord { x: -1.0, y: -1.0 }, Coord { x: 1.0, y: 1.0 });
        let edges = Edges::new(&corners, std::iter::once(0..corners.len()), bounds);
        let mut inside = 0;
        for column in -60..=60 {
            for row in -60..=60 {
                let point = Coord {
                    x: f64::from(column) / 50.0,
                    y: f64::from(row) / 50.0,
                };
                let all = corners.array_windows();
                let expected: i32 = all.map(|[start, end]| winding(*start, *end, point)).sum();
                let turns = edges.turns(&corners, point, Rect::new(point, point), |_, _| false);
                assert_eq!(turns, Some(expected), "{point:?}");
                inside += expected;
            }
        }
        assert!(inside > 1000);
    }

    #[test]
    fn an_edge_that_meets_the_box_is_shown() {
        let square = line_string![(x: 0., y: 0.), (x: 9., y: 0.), (x: 9., y: 9.), (x: 0., y: 9.), (x: 0., y: 0.)];
        assert!(square.is_ccw());
        let bounds = Rect::new(Coord { x: 0., y: 0. }, Coord { x: 9., y: 9. });
        let edges = Edges::new(&square.0, std::iter::once(0..5), bounds);
        for (x, y) in [
            (9.05, 4.0),
            (8.95, 4.0),
            (4.0, -0.05),
            (0.0, 9.0),
            (-0.05, 4.0),
        ] {
            let point = Coord { x, y };
            let margin = Coord { x: 0.1, y: 0.1 };
            let near = Rect::new(point - margin, point + margin);
            assert_eq!(edges.turns(&square.0, point, near, |_, _| true), None);
        }
    }
}
