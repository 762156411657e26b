//! The zones of a layer, by place.

use std::cell::RefCell;
use std::sync::Arc;

use geo::Coord;
use smallvec::SmallVec;

use super::neighbourhood::Neighbourhood;
use super::shared::SharedZones;
use super::{LayerOrigin, Zone, ZoneArea, ZonesHere};
use crate::crs::{CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::site::Location;

/// The zones of one layer, or of a part of it, as one thread asks them.
///
/// Neither `Send` nor `Sync`, as its projector is not. Another thread makes its own from the
/// zones that they share:
///
/// ```
/// # use std::path::Path;
/// use sillmark::hazard::{ZoneStatement, read_zones};
/// use sillmark::site::Location;
/// # let path = &Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/alder-lock/zones.geojson");
/// let map = read_zones(path, None, &ZoneStatement::default(), None)?;
/// let shared = map.share();
/// let place = Location::from_degrees(-76.9, 41.2)?;
/// let other = std::thread::spawn(move || {
///     let map = shared.map()?;
///     map.numbers_at(place)
/// });
/// assert_eq!(other.join().unwrap()?, map.numbers_at(place)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct ZoneMap {
    projector: Projector,
    shared: Arc<SharedZones>,
    /// Around the place that was asked for last.
    around: RefCell<Neighbourhood>,
}

impl ZoneMap {
    /// A map of zones whose areas are in the coordinates of `projector`.
    pub(super) fn new(projector: Projector, shared: Arc<SharedZones>) -> Self {
        Self {
            projector,
            shared,
            around: RefCell::default(),
        }
    }

    /// The zones without what belongs to this thread, for another to make its own map of.
    #[must_use]
    pub fn share(&self) -> Arc<SharedZones> {
        Arc::clone(&self.shared)
    }

    /// The layer's coordinate reference system.
    #[must_use]
    pub const fn crs(&self) -> &HorizontalCrs {
        self.projector.target()
    }

    /// Where they were read from.
    #[must_use]
    pub fn origin(&self) -> &LayerOrigin {
        self.shared.origin()
    }

    /// The zones with their areas (in the layer's coordinates), in the order of the layer.
    #[must_use]
    pub fn zones(&self) -> impl ExactSizeIterator<Item = (&Zone, &ZoneArea)> {
        self.shared.zones().iter().map(|(zone, area)| (zone, area))
    }

    /// How many features had no geometry or an empty one.
    #[must_use]
    pub fn without_area(&self) -> usize {
        self.shared.without_area()
    }

    /// The zones at a place. A point inside an area, or within a millimetre of its edge,
    /// belongs to it.
    ///
    /// # Errors
    /// [`CrsError`] where the place has no coordinates in the layer's system.
    pub fn at(&self, location: Location) -> Result<ZonesHere<'_>, CrsError> {
        let (numbers, on_edge) = self.numbers_at(location)?;
        Ok(self.here(&numbers, on_edge))
    }

    /// As [`at`](Self::at), the zones by their position in [`zones`](Self::zones), which is
    /// the same on every thread; and whether the place lies on an edge.
    ///
    /// # Errors
    /// As [`at`](Self::at).
    pub fn numbers_at(&self, location: Location) -> Result<(SmallVec<[u32; 2]>, bool), CrsError> {
        let frame = self.frame(location)?;
        Ok(self.shared.at(&frame, &mut self.around.borrow_mut()))
    }

    /// What [`numbers_at`](Self::numbers_at) found, as zones.
    #[must_use]
    pub fn here(&self, numbers: &[u32], on_edge: bool) -> ZonesHere<'_> {
        let zones = numbers.iter();
        ZonesHere {
            zones: zones
                .filter_map(|number| self.shared.zone(*number))
                .collect(),
            on_edge,
        }
    }

    /// The position of a zone of this map in [`zones`](Self::zones); `None` for any other,
    /// a copy included.
    #[must_use]
    pub fn number_of(&self, zone: &Zone) -> Option<u32> {
        self.shared.number_of(zone)
    }

    /// The zone at a position of [`zones`](Self::zones).
    #[must_use]
    pub fn zone(&self, number: u32) -> Option<&Zone> {
        self.shared.zone(number)
    }

    /// The plane around a place: between metres and the layer's coordinates.
    ///
    /// # Errors
    /// [`CrsError`] where the place has no coordinates in the layer's system.
    pub fn frame(&self, location: Location) -> Result<LocalFrame, CrsError> {
        LocalFrame::new(&self.projector, location)
    }

    /// The place of a point in the layer's coordinates.
    ///
    /// # Errors
    /// [`CrsError`] where it has none.
    pub fn location(&self, point: Coord<f64>) -> Result<Location, CrsError> {
        self.projector.location(point.x, point.y)
    }

    /// The zones, by their position in [`zones`](Self::zones), that hold a point of the
    /// layer's plane. On an edge it may be either side.
    pub fn holding(&self, point: Coord<f64>) -> impl Iterator<Item = usize> + '_ {
        let numbers = self.shared.holding(point);
        numbers.filter_map(|number| usize::try_from(number).ok())
    }
}
