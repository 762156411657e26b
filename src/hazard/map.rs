//! The zones of a layer, by place.

use geo::{Coord, MultiPolygon};
use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree};

use super::Zone;
use super::polygon::{EDGE_METRES, ZonePolygon};
use crate::crs::{CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// The zones of one layer, or of a part of it.
///
/// Neither `Send` nor `Sync`: a thread reads its own.
pub struct ZoneMap {
    projector: Projector,
    zones: Vec<(Zone, ZonePolygon)>,
    index: RTree<Indexed>,
    without_area: usize,
}

/// The box of a zone and its position in the list.
type Indexed = GeomWithData<Rectangle<[f64; 2]>, usize>;

/// What a map says about a point.
#[derive(Clone, Debug, PartialEq)]
pub struct ZonesHere<'map> {
    /// Every zone that holds the point, the worst first; among equals the one with the
    /// higher level. Empty where the map has no zone there, which means unknown.
    pub zones: Vec<&'map Zone>,
    /// Whether the point lies within a millimetre of the edge of one of them.
    pub on_edge: bool,
}

impl ZoneMap {
    /// A map of zones whose areas are in the coordinates of `projector`.
    pub(super) fn new(
        projector: Projector,
        features: Vec<(Zone, Option<MultiPolygon<f64>>)>,
    ) -> Self {
        let count = features.len();
        let zones: Vec<_> = features
            .into_iter()
            .filter_map(|(zone, area)| Some((zone, ZonePolygon::new(&area?)?)))
            .collect();
        let boxes = zones.iter().enumerate().map(|(position, (_, polygon))| {
            let (low, high) = (polygon.bounds().min(), polygon.bounds().max());
            let bounds = Rectangle::from_corners([low.x, low.y], [high.x, high.y]);
            GeomWithData::new(bounds, position)
        });
        Self {
            projector,
            index: RTree::bulk_load(boxes.collect()),
            without_area: count - zones.len(),
            zones,
        }
    }

    /// The layer's coordinate reference system.
    #[must_use]
    pub const fn crs(&self) -> &HorizontalCrs {
        self.projector.target()
    }

    /// The zones with their areas (in the layer's coordinates, shells counter-clockwise,
    /// holes clockwise), in the order of the layer.
    #[must_use]
    pub fn zones(&self) -> impl ExactSizeIterator<Item = (&Zone, &MultiPolygon<f64>)> {
        self.zones
            .iter()
            .map(|(zone, polygon)| (zone, polygon.area()))
    }

    /// How many features had no geometry or an empty one.
    #[must_use]
    pub const fn without_area(&self) -> usize {
        self.without_area
    }

    /// The zones at a place. A point inside an area, or within a millimetre of its edge,
    /// belongs to it.
    ///
    /// # Errors
    /// [`CrsError`] where the place has no coordinates in the layer's system.
    pub fn at(&self, location: Location) -> Result<ZonesHere<'_>, CrsError> {
        let frame = LocalFrame::new(&self.projector, location)?;
        Ok(self.at_frame(&frame))
    }

    /// The plane around a place: between metres and the layer's coordinates.
    ///
    /// # Errors
    /// [`CrsError`] where the place has no coordinates in the layer's system.
    pub fn frame(&self, location: Location) -> Result<LocalFrame, CrsError> {
        LocalFrame::new(&self.projector, location)
    }

    /// The zones, by their position in [`zones`](Self::zones), that hold a point of the
    /// layer's plane. On an edge it may be either side.
    pub fn holding(&self, point: Coord<f64>) -> impl Iterator<Item = usize> + '_ {
        let around = AABB::from_point([point.x, point.y]);
        self.index
            .locate_in_envelope_intersecting(&around)
            .filter(move |candidate| {
                let zone = self.zones.get(candidate.data);
                zone.is_some_and(|(_, polygon)| polygon.contains(point))
            })
            .map(|candidate| candidate.data)
    }

    fn at_frame(&self, frame: &LocalFrame) -> ZonesHere<'_> {
        let point: Coord<f64> = frame.origin();
        let near = frame.box_around(Length::new::<meter>(2.0 * EDGE_METRES));
        let (low, high) = (near.min(), near.max());
        let around = AABB::from_corners([low.x, low.y], [high.x, high.y]);
        let mut here = Vec::new();
        let mut on_edge = false;
        for candidate in self.index.locate_in_envelope_intersecting(&around) {
            let Some((zone, polygon)) = self.zones.get(candidate.data) else {
                continue;
            };
            let touches = polygon.is_on_edge(frame, near);
            if touches || polygon.contains(point) {
                on_edge |= touches;
                here.push((candidate.data, zone));
            }
        }
        here.sort_by(|(first, left), (second, right)| {
            worst_first(left, right).then(first.cmp(second))
        });
        ZonesHere {
            zones: here.into_iter().map(|(_, zone)| zone).collect(),
            on_edge,
        }
    }
}

impl ZonesHere<'_> {
    /// What several maps say together.
    #[must_use]
    pub fn join(maps: impl IntoIterator<Item = Self>) -> Self {
        let mut joined = Self {
            zones: Vec::new(),
            on_edge: false,
        };
        for here in maps {
            joined.zones.extend(here.zones);
            joined.on_edge |= here.on_edge;
        }
        joined.zones.sort_by(|left, right| worst_first(left, right));
        joined
    }
}

fn worst_first(left: &Zone, right: &Zone) -> std::cmp::Ordering {
    right
        .class
        .cmp(&left.class)
        .then_with(|| higher(left, right))
}

/// The zone with the higher level or the greater depth first.
fn higher(left: &Zone, right: &Zone) -> std::cmp::Ordering {
    let by_level = match (left.level, right.level) {
        // By the bare number, whatever the datum, so that the order is total.
        (Some(left), Some(right)) => right.height().value.total_cmp(&left.height().value),
        (left, right) => right.is_some().cmp(&left.is_some()),
    };
    let depth = |zone: &Zone| zone.depth.map_or(-1.0, |depth| depth.value);
    by_level.then_with(|| depth(right).total_cmp(&depth(left)))
}
