//! Rings that are wound clockwise where they are shells (GeoServices REST, polygons).

use std::cell::OnceCell;

use geo::indexed::IntervalTreeMultiPolygon;
use geo::winding_order::{Winding as _, WindingOrder};
use geo::{Area as _, BoundingRect as _, Contains as _, Coord, LineString, Polygon, Rect};
use rstar::RTree;
use rstar::primitives::{GeomWithData, Rectangle};

use super::inner_position::inner_position;

/// No feature has more rings. Common practice, no source.
const MOST_RINGS: usize = 200_000;

/// No feature has more pairs of a shell and a hole of which one could hold the other: rings that
/// lie in each other thousands deep would be compared for minutes. Common practice, no source.
const MOST_PAIRS: usize = 20_000_000;

/// How far a hole that touches its shell may stand out of it, in degrees: servers round
/// coordinates, to no less than six decimals where they do (about 0.1 m; common practice, no
/// source).
const ROUNDING: f64 = 1e-6;

/// The polygons that rings make: each hole belongs to the smallest shell that holds it. A hole
/// in no shell is taken as a shell that is wound wrongly; a ring without an area is neither.
pub(super) fn polygons(rings: Vec<LineString<f64>>) -> Result<Vec<Polygon<f64>>, String> {
    if rings.len() > MOST_RINGS {
        return Err(format!(
            "it has {} rings; accepted: {MOST_RINGS} and fewer",
            rings.len()
        ));
    }
    let mut shells = Vec::new();
    let mut holes = Vec::new();
    for mut ring in rings {
        ring.close();
        match ring.winding_order() {
            None => {}
            Some(WindingOrder::Clockwise) => shells.extend(Shell::new(ring)),
            Some(WindingOrder::CounterClockwise) => holes.push(ring),
        }
    }
    let owners = owners(&shells, &holes)?;
    let mut polygons: Vec<Polygon<f64>> = shells.into_iter().map(|shell| shell.polygon).collect();
    for (hole, owner) in holes.into_iter().zip(owners) {
        match owner {
            Some(number) => polygons[number].interiors_push(hole),
            None => polygons.push(Polygon::new(hole, Vec::new())),
        }
    }
    Ok(polygons)
}

/// The number of the shell that each hole belongs to.
fn owners(shells: &[Shell], holes: &[LineString<f64>]) -> Result<Vec<Option<usize>>, String> {
    let boxes = shells.iter().enumerate().map(|(number, shell)| {
        let (low, high) = (shell.extent.min(), shell.extent.max());
        GeomWithData::new(
            Rectangle::from_corners([low.x, low.y], [high.x, high.y]),
            number,
        )
    });
    let index = RTree::bulk_load(boxes.collect());
    let mut pairs = 0;
    let mut owners = Vec::with_capacity(holes.len());
    for hole in holes {
        let (Some(inside), Some(extent)) = (inner_position(hole), hole.bounding_rect()) else {
            owners.push(None);
            continue;
        };
        let area = Polygon::new(hole.clone(), Vec::new()).unsigned_area();
        let mut around = Vec::new();
        for found in index.locate_all_at_point(&[inside.x, inside.y]) {
            pairs += 1;
            if pairs > MOST_PAIRS {
                return Err(format!(
                    "its {} rings lie too deeply in each other",
                    shells.len() + holes.len()
                ));
            }
            let shell = &shells[found.data];
            if shell.area > area && shell.surrounds(extent) {
                around.push(found.data);
            }
        }
        around.sort_by(|one, other| shells[*one].area.total_cmp(&shells[*other].area));
        owners.push(
            around
                .into_iter()
                .find(|number| shells[*number].holds(inside)),
        );
    }
    Ok(owners)
}

/// A shell, to be asked about many positions.
struct Shell {
    polygon: Polygon<f64>,
    extent: Rect<f64>,
    area: f64,
    edges: OnceCell<IntervalTreeMultiPolygon<f64>>,
}

impl Shell {
    fn new(ring: LineString<f64>) -> Option<Self> {
        let polygon = Polygon::new(ring, Vec::new());
        Some(Self {
            extent: polygon.bounding_rect()?,
            area: polygon.unsigned_area(),
            polygon,
            edges: OnceCell::new(),
        })
    }

    fn surrounds(&self, inner: Rect<f64>) -> bool {
        let outer = self.extent;
        outer.min().x <= inner.min().x + ROUNDING
            && outer.min().y <= inner.min().y + ROUNDING
            && outer.max().x >= inner.max().x - ROUNDING
            && outer.max().y >= inner.max().y - ROUNDING
    }

    fn holds(&self, position: Coord<f64>) -> bool {
        let edges = self
            .edges
            .get_or_init(|| IntervalTreeMultiPolygon::new(&self.polygon.clone().into()));
        edges.contains(&position)
    }
}
