//! Between a place and its coordinates, with one axis order.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use geo::Coord;

use super::lattice::Lattice;
use super::operation::{LONGITUDE_LATITUDE, Operation};
use super::{CrsError, HorizontalCrs};
use crate::site::Location;

/// Turns WGS 84 longitude and latitude into the x and y of another system, and back.
///
/// Neither `Send` nor `Sync`, as PROJ's contexts are not: one for each thread.
pub struct Projector {
    target: HorizontalCrs,
    operation: Rc<Operation>,
}

thread_local! {
    /// The transformations that this thread has asked for, by the target's definition: the
    /// layers and rasters of a place mostly share a system, and PROJ searches long.
    static FOUND: RefCell<HashMap<String, Rc<Operation>>> = RefCell::default();
}

/// How near coordinates that are turned into a place have to come back, metres.
const RETURN_METRES: f64 = 1e-4;

/// Degrees of less than [`RETURN_METRES`] anywhere.
const RETURN_DEGREES: f64 = 1e-9;

impl Projector {
    /// The transformation from WGS 84 to `target`.
    ///
    /// # Errors
    /// [`CrsError::NoTransformation`] where PROJ knows none, or only one that ignores the
    /// datum.
    ///
    /// ```
    /// use sillmark::{crs::{CrsDefinition, Projector}, site::Location};
    /// let long_island = CrsDefinition::from_text("EPSG:2263")?.horizontal;
    /// let projector = Projector::new(long_island)?;
    /// // 74 degrees west is the central meridian, with a false easting of 300 000 m.
    /// let place = projector.project(Location::from_degrees(-74.0, 40.7)?)?;
    /// assert!((place.x - 984_250.0).abs() < 0.01, "{place:?}");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(target: HorizontalCrs) -> Result<Self, CrsError> {
        let found = FOUND.with_borrow(|found| found.get(target.definition()).map(Rc::clone));
        if let Some(operation) = found {
            return Ok(Self { target, operation });
        }
        let operation = Operation::new(&target).map_err(|detail| CrsError::NoTransformation {
            name: target.name().to_owned(),
            detail,
        })?;
        let operation = Rc::new(operation);
        let definition = target.definition().to_owned();
        FOUND.with_borrow_mut(|found| found.insert(definition, Rc::clone(&operation)));
        Ok(Self { target, operation })
    }

    /// The system that coordinates come out in.
    #[must_use]
    pub const fn target(&self) -> &HorizontalCrs {
        &self.target
    }

    /// The coordinates of a place: x east, y north, degrees or the system's unit.
    ///
    /// # Errors
    /// [`CrsError::OutsideDomain`] where the system cannot express the place,
    /// [`CrsError::Guess`] where PROJ would ignore the datum there.
    pub fn project(&self, location: Location) -> Result<Coord<f64>, CrsError> {
        self.project_degrees(location.longitude(), location.latitude())
    }

    /// The place that has these coordinates: the one that [`project`](Self::project) turns
    /// into them, to a tenth of a millimetre.
    ///
    /// # Errors
    /// [`CrsError::NoPlace`] where there is none, [`CrsError::Guess`] where PROJ would ignore
    /// the datum there.
    ///
    /// ```
    /// use sillmark::crs::{CrsDefinition, Projector};
    /// let long_island = Projector::new(CrsDefinition::from_text("EPSG:2263")?.horizontal)?;
    /// let place = long_island.location(984_250.0, 190_000.0)?;
    /// assert!((place.longitude() + 74.0).abs() < 1e-7);
    /// # Ok::<(), sillmark::crs::CrsError>(())
    /// ```
    pub fn location(&self, x: f64, y: f64) -> Result<Location, CrsError> {
        let nowhere = |detail: String| CrsError::NoPlace {
            name: self.target.name().to_owned(),
            x,
            y,
            detail,
        };
        let degrees = |place: Coord<f64>| {
            Location::from_degrees(place.x, place.y).map_err(|error| nowhere(error.to_string()))
        };
        if matches!(self.target.definition(), "EPSG:4326" | LONGITUDE_LATITUDE) {
            return degrees(Coord { x, y });
        }
        let tolerance = self
            .target
            .metres_per_unit()
            .map_or(RETURN_DEGREES, |unit| RETURN_METRES / unit);
        let asked = Coord { x, y };
        let back = |point| self.unproject(point).map_err(nowhere);
        let mut place = back(asked)?;
        // PROJ chooses among several operations by other boxes on the way back, so that the
        // first answer may be metres off; the second is not.
        for _ in 0..4 {
            let location = degrees(place)?;
            let there = self.project(location)?;
            let off = asked - there;
            if off.x.abs() <= tolerance && off.y.abs() <= tolerance {
                return Ok(location);
            }
            place = place + back(asked)? - back(there)?;
        }
        Err(nowhere(
            "several transformations meet there, and none leads back to it".to_owned(),
        ))
    }

    pub(super) fn lattice(&self) -> &Lattice {
        &self.operation.lattice
    }

    /// Degrees east and north, by the operation that PROJ chooses for the way back.
    fn unproject(&self, point: Coord<f64>) -> Result<Coord<f64>, String> {
        if !(point.x.is_finite() && point.y.is_finite()) {
            return Err("not finite".to_owned());
        }
        let (x, y): (f64, f64) = self
            .operation
            .proj
            .project(self.in_order(point).x_y(), true)
            .map_err(|error| error.to_string())?;
        if x.is_finite() && y.is_finite() {
            Ok(Coord { x, y })
        } else {
            Err(String::new())
        }
    }

    /// From east and north to the order of the system's authority, and back.
    const fn in_order(&self, point: Coord<f64>) -> Coord<f64> {
        if self.target.is_north_first() {
            Coord {
                x: point.y,
                y: point.x,
            }
        } else {
            point
        }
    }

    /// As [`project`](Self::project), for degrees that may lie beyond a turn or a pole.
    pub(super) fn project_degrees(
        &self,
        longitude: f64,
        latitude: f64,
    ) -> Result<Coord<f64>, CrsError> {
        let asked = Coord {
            x: longitude,
            y: latitude,
        };
        if let Some([last, point]) = self.operation.last.get()
            && last == asked
        {
            return Ok(point);
        }
        let point = self.transformed(longitude, latitude)?;
        self.operation.last.set(Some([asked, point]));
        Ok(point)
    }

    fn transformed(&self, longitude: f64, latitude: f64) -> Result<Coord<f64>, CrsError> {
        let name = || self.target.name().to_owned();
        let outside = |detail: String| CrsError::OutsideDomain {
            name: name(),
            longitude,
            latitude,
            detail,
        };
        let (x, y): (f64, f64) = self
            .operation
            .proj
            .convert((longitude, latitude))
            .map_err(|error| outside(error.to_string()))?;
        if !(x.is_finite() && y.is_finite()) {
            return Err(outside(String::new()));
        }
        if self.operation.has_guessed(longitude, latitude) {
            return Err(CrsError::Guess {
                name: name(),
                longitude,
                latitude,
            });
        }
        Ok(self.in_order(Coord { x, y }))
    }
}
