//! Points along the edge of an area.

use geo::{Coord, LineString, Polygon};

use crate::crs::LocalFrame;

/// A point of an edge, in metres east and north of the place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct EdgePoint {
    pub(super) at: Coord<f64>,
    /// One metre out of the area, across the edge.
    pub(super) outside: Coord<f64>,
    /// Distance from the place.
    pub(super) distance: f64,
    /// The stretch of edge that it belongs to.
    pub(super) stretch: usize,
}

/// Points of a stretch: neighbours along the edge, whose levels are summed up as one.
pub(super) const STRETCH: usize = 25;

/// How far beside the edge one asks what lies there, metres: farther than the gaps and
/// overlaps of digitising, nearer than the next field.
const BESIDE: f64 = 1.0;

/// The points of a polygon's rings, `spacing` apart or a little less, within `radius` of the
/// place. Stretches are numbered from `first_stretch`; the next free number comes back.
///
/// Rings are wound so that the area lies on their left, as `ZoneMap` gives them.
pub(super) fn points(
    polygon: &Polygon<f64>,
    frame: &LocalFrame,
    spacing: f64,
    radius: f64,
    first_stretch: usize,
    found: &mut Vec<EdgePoint>,
) -> usize {
    let mut stretch = first_stretch;
    for ring in std::iter::once(polygon.exterior()).chain(polygon.interiors()) {
        stretch = along(ring, frame, spacing, radius, stretch, found);
    }
    stretch
}

fn along(
    ring: &LineString<f64>,
    frame: &LocalFrame,
    spacing: f64,
    radius: f64,
    first_stretch: usize,
    found: &mut Vec<EdgePoint>,
) -> usize {
    let corners: Vec<Coord<f64>> = ring.coords().map(|corner| frame.metres(*corner)).collect();
    let sides = || corners.iter().copied().zip(corners.iter().copied().skip(1));
    let around: f64 = sides().map(|(start, end)| length(end - start)).sum();
    if around <= 0.0 {
        return first_stretch;
    }
    #[allow(clippy::cast_precision_loss)] // far fewer than 2⁵³ points
    let step = around / (around / spacing).ceil().max(1.0);
    let (mut next, mut passed, mut index) = (0.5 * step, 0.0, 0_usize);
    for (start, end) in sides() {
        let side = length(end - start);
        while side > 0.0 && next <= passed + side && next < around {
            let direction = (end - start) / side;
            let at = start + direction * (next - passed);
            let distance = length(at);
            if distance <= radius {
                let out = Coord {
                    x: direction.y,
                    y: -direction.x,
                };
                found.push(EdgePoint {
                    at,
                    outside: at + out * BESIDE,
                    distance,
                    stretch: first_stretch + index / STRETCH,
                });
            }
            next += step;
            index += 1;
        }
        passed += side;
    }
    first_stretch + index / STRETCH + 1
}

fn length(vector: Coord<f64>) -> f64 {
    vector.x.hypot(vector.y)
}
