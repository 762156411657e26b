//! The one constructor of a transformation, with its one axis order.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use geo::Coord;
use proj::Proj;

use super::{CrsError, HorizontalCrs};
use crate::site::Location;

/// Turns WGS 84 longitude and latitude into the x and y of another system.
///
/// Neither `Send` nor `Sync`, as PROJ's contexts are not: one for each thread.
pub struct Projector {
    target: HorizontalCrs,
    /// Longitude and latitude to the target's axes in the order of its authority.
    proj: Rc<Proj>,
}

thread_local! {
    /// The transformations that this thread has asked for, by the target's definition: the
    /// layers and rasters of a place mostly share a system, and PROJ searches long.
    static FOUND: RefCell<HashMap<String, Rc<Proj>>> = RefCell::default();
}

/// WGS 84 in the order longitude, latitude.
const LONGITUDE_LATITUDE: &str = "OGC:CRS84";

/// PROJ looks for operations in the EPSG Dataset alone: among those of every authority the
/// search between two datums takes six times as long (107 ms against 16 ms from WGS 84 to
/// NAD83), and ends with the same operation.
const EPSG_ONLY: &str = "AUTHORITY=EPSG";

/// PROJ's word, in the description of an operation, for a step that ignores the datum.
const GUESS: &str = "Ballpark";

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
        let none = |detail: String| CrsError::NoTransformation {
            name: target.name().to_owned(),
            detail,
        };
        let found = FOUND.with_borrow(|found| found.get(target.definition()).map(Rc::clone));
        if let Some(proj) = found {
            return Ok(Self { target, proj });
        }
        #[allow(clippy::disallowed_methods)] // this is the one constructor
        let create = Proj::new;
        let proj = create(LONGITUDE_LATITUDE)
            .and_then(|source| {
                let target = create(target.definition())?;
                source.create_crs_to_crs_from_pj(&target, None, Some(vec![EPSG_ONLY]))
            })
            .map_err(|error| none(error.to_string()))?;
        // A single operation is described before its first use; of several, PROJ chooses
        // at each point.
        match proj.proj_info().description {
            Some(description) if description.contains(GUESS) => Err(none(
                "its datum is not known, PROJ would ignore it".to_owned(),
            )),
            _ => {
                let proj = Rc::new(proj);
                let definition = target.definition().to_owned();
                FOUND.with_borrow_mut(|found| found.insert(definition, Rc::clone(&proj)));
                Ok(Self { target, proj })
            }
        }
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

    /// As [`project`](Self::project), for degrees that may lie beyond a turn or a pole.
    pub(super) fn project_degrees(
        &self,
        longitude: f64,
        latitude: f64,
    ) -> Result<Coord<f64>, CrsError> {
        let name = || self.target.name().to_owned();
        let outside = |detail: String| CrsError::OutsideDomain {
            name: name(),
            longitude,
            latitude,
            detail,
        };
        let (first, second): (f64, f64) = self
            .proj
            .convert((longitude, latitude))
            .map_err(|error| outside(error.to_string()))?;
        let (x, y) = if self.target.is_north_first() {
            (second, first)
        } else {
            (first, second)
        };
        if !(x.is_finite() && y.is_finite()) {
            return Err(outside(String::new()));
        }
        // The description is that of the operation just used.
        let description = self.proj.proj_info().description;
        if description.is_none_or(|description| description.contains(GUESS)) {
            return Err(CrsError::Guess {
                name: name(),
                longitude,
                latitude,
            });
        }
        Ok(Coord { x, y })
    }

    /// The place of coordinates in the system, x (east) first: the way back.
    ///
    /// # Errors
    /// [`CrsError::NoPlace`] where they are none, or where PROJ would ignore the datum.
    pub fn locate(&self, place: Coord<f64>) -> Result<Location, CrsError> {
        let none = |detail: String| CrsError::NoPlace {
            name: self.target.name().to_owned(),
            x: place.x,
            y: place.y,
            detail,
        };
        let (first, second) = if self.target.is_north_first() {
            (place.y, place.x)
        } else {
            (place.x, place.y)
        };
        // Not `Proj::convert`, which knows one direction only.
        let (longitude, latitude): (f64, f64) = self
            .proj
            .project((first, second), true)
            .map_err(|error| none(error.to_string()))?;
        let description = self.proj.proj_info().description;
        if description.is_none_or(|description| description.contains(GUESS)) {
            return Err(none(
                "the transformation would have to be guessed".to_owned(),
            ));
        }
        Location::from_degrees(longitude, latitude).map_err(|error| none(error.to_string()))
    }
}
