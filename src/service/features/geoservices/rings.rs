//! Rings that are wound clockwise where they are shells (GeoServices REST, polygons).

use geo::coordinate_position::{CoordPos, CoordinatePosition as _};
use geo::winding_order::{Winding as _, WindingOrder};
use geo::{Area as _, BoundingRect as _, LineString, Polygon};

/// The polygons that rings make: each hole belongs to the smallest shell that holds it. A hole
/// in no shell is taken as a shell that is wound wrongly; a ring without an area is neither.
pub(super) fn polygons(rings: Vec<LineString<f64>>) -> Vec<Polygon<f64>> {
    let mut shells = Vec::new();
    let mut holes = Vec::new();
    for mut ring in rings {
        ring.close();
        match ring.winding_order() {
            None => {}
            Some(WindingOrder::Clockwise) => shells.push(Polygon::new(ring, Vec::new())),
            Some(WindingOrder::CounterClockwise) => holes.push(ring),
        }
    }
    let mut polygons = shells.clone();
    for hole in holes {
        let holding = shells
            .iter()
            .enumerate()
            .filter(|(_, shell)| holds(shell, &hole))
            .min_by(|(_, one), (_, other)| one.unsigned_area().total_cmp(&other.unsigned_area()));
        match holding {
            Some((position, _)) => polygons[position].interiors_push(hole),
            None => polygons.push(Polygon::new(hole, Vec::new())),
        }
    }
    polygons
}

/// Whether a shell holds a hole: the first of its positions, or of the middles between them,
/// that is not on the edge decides.
fn holds(shell: &Polygon<f64>, hole: &LineString<f64>) -> bool {
    let (Some(outer), Some(inner)) = (shell.bounding_rect(), hole.bounding_rect()) else {
        return false;
    };
    let fits = outer.min().x <= inner.min().x
        && outer.min().y <= inner.min().y
        && outer.max().x >= inner.max().x
        && outer.max().y >= inner.max().y;
    if !fits {
        return false;
    }
    let middles = hole.lines().map(|line| (line.start + line.end) / 2.0);
    hole.coords()
        .copied()
        .chain(middles)
        .map(|position| shell.coordinate_position(&position))
        .find(|position| *position != CoordPos::OnBoundary)
        .is_some_and(|position| position == CoordPos::Inside)
}
