//! The zones of a layer, shared by threads.

use std::sync::Arc;

use geo::Coord;
use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree};
use smallvec::SmallVec;

use super::area::{EDGE_METRES, Position, ZoneArea};
use super::here::worst_first;
use super::neighbourhood::Neighbourhood;
use super::{LayerOrigin, Zone, ZoneMap};
use crate::crs::{CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::quantity::{Length, unit::meter};

/// The zones of one layer, or of a part of it, with their areas: what all threads may read at
/// once. A thread asks them through its own [`ZoneMap`], see [`ZoneMap::share`].
pub struct SharedZones {
    crs: HorizontalCrs,
    origin: LayerOrigin,
    zones: Vec<(Zone, ZoneArea)>,
    index: RTree<Indexed>,
    without_area: usize,
}

/// The box of a zone and its number.
pub(super) type Indexed = GeomWithData<Rectangle<[f64; 2]>, u32>;

/// The numbers of zones; there are seldom more than two.
pub(super) type Numbers = SmallVec<[u32; 2]>;

impl SharedZones {
    pub(super) fn new(
        crs: HorizontalCrs,
        origin: LayerOrigin,
        zones: Vec<(Zone, ZoneArea)>,
        without_area: usize,
    ) -> Self {
        let boxes = (0..).zip(&zones).map(|(number, (_, area))| {
            let (low, high) = (area.bounds().min(), area.bounds().max());
            let bounds = Rectangle::from_corners([low.x, low.y], [high.x, high.y]);
            GeomWithData::new(bounds, number)
        });
        Self {
            crs,
            origin,
            index: RTree::bulk_load(boxes.collect()),
            zones,
            without_area,
        }
    }

    /// The map of these zones for the thread that calls.
    ///
    /// # Errors
    /// [`CrsError::NoTransformation`], which reading the layer would have met before.
    pub fn map(self: &Arc<Self>) -> Result<ZoneMap, CrsError> {
        let projector = Projector::new(self.crs.clone())?;
        Ok(ZoneMap::new(projector, Arc::clone(self)))
    }

    pub(super) const fn origin(&self) -> &LayerOrigin {
        &self.origin
    }

    pub(super) fn zones(&self) -> &[(Zone, ZoneArea)] {
        &self.zones
    }

    pub(super) const fn without_area(&self) -> usize {
        self.without_area
    }

    pub(super) fn zone(&self, number: u32) -> Option<&Zone> {
        let (zone, _) = self.zones.get(usize::try_from(number).ok()?)?;
        Some(zone)
    }

    /// The number of a zone that is one of these, not a copy of one.
    pub(super) fn number_of(&self, zone: &Zone) -> Option<u32> {
        let (first, _) = self.zones.first()?;
        let address = |zone: &Zone| std::ptr::from_ref(zone) as usize;
        let beyond = address(zone).checked_sub(address(first))?;
        let number = u32::try_from(beyond / size_of::<(Zone, ZoneArea)>()).ok()?;
        let same = self
            .zone(number)
            .is_some_and(|known| std::ptr::eq(known, zone));
        same.then_some(number)
    }

    fn area(&self, number: u32) -> Option<&ZoneArea> {
        let (_, area) = self.zones.get(usize::try_from(number).ok()?)?;
        Some(area)
    }

    /// The zones that hold a point; on an edge it may be either side.
    pub(super) fn holding(&self, point: Coord<f64>) -> impl Iterator<Item = u32> + '_ {
        let around = AABB::from_point([point.x, point.y]);
        self.index
            .locate_in_envelope_intersecting(&around)
            .map(|candidate| candidate.data)
            .filter(move |number| self.area(*number).is_some_and(|area| area.contains(point)))
    }

    /// The zones that hold the place of a frame or end there, the worst first, and whether
    /// it lies on the edge of one of them. `around` is that of the same zones.
    pub(super) fn at(&self, frame: &LocalFrame, around: &mut Neighbourhood) -> (Numbers, bool) {
        let near = frame.box_around(Length::new::<meter>(2.0 * EDGE_METRES));
        let mut numbers = Numbers::new();
        let mut on_edge = false;
        for number in around.meeting(near, frame, &self.index) {
            let Some(area) = self.area(number) else {
                continue;
            };
            let position = area.position(frame, near);
            if position != Position::Outside {
                on_edge |= position == Position::OnEdge;
                numbers.push(number);
            }
        }
        if numbers.len() > 1 {
            numbers.sort_unstable_by(|first, second| {
                let by_zone = match (self.zone(*first), self.zone(*second)) {
                    (Some(left), Some(right)) => worst_first(left, right),
                    _ => std::cmp::Ordering::Equal,
                };
                by_zone.then(first.cmp(second))
            });
        }
        (numbers, on_edge)
    }
}
