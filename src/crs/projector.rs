//! The one constructor of a transformation, with its one axis order.

use geo::Coord;
use proj::Proj;

use super::{CrsError, HorizontalCrs};
use crate::site::Location;

/// Turns WGS 84 longitude and latitude into the x and y of another system.
///
/// Neither `Send` nor `Sync`, as PROJ's contexts are not: one for each thread.
pub struct Projector {
    target: HorizontalCrs,
    /// x east and y north on both sides.
    normalised: Proj,
    /// Without the transformations that ignore the datum; axes as the authority orders them.
    strict: Proj,
}

/// Greatest relative difference of two results of one transformation.
const SAME: f64 = 1e-11;

impl Projector {
    /// The transformation from WGS 84 to `target`.
    ///
    /// # Errors
    /// [`CrsError::NoTransformation`] where PROJ knows none, or only one that ignores the
    /// datum.
    ///
    /// ```
    /// use sillmark::{crs::{CrsDefinition, Projector}, site::Location};
    /// let new_york_long_island = CrsDefinition::from_text("EPSG:2263")?.horizontal;
    /// let projector = Projector::new(new_york_long_island)?;
    /// let place = projector.project(Location::from_degrees(-74.0335, 40.74)?)?;
    /// assert!((place.x - 974_956.0).abs() < 10.0 && (place.y - 208_878.0).abs() < 10.0, "{place:?}");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(target: HorizontalCrs) -> Result<Self, CrsError> {
        #[allow(clippy::disallowed_methods)] // this is the one constructor
        fn transformations(definition: &str) -> Result<(Proj, Proj), proj::ProjCreateError> {
            let strict = Proj::new("OGC:CRS84")?.create_crs_to_crs_from_pj(
                &Proj::new(definition)?,
                None,
                Some(vec!["ALLOW_BALLPARK=NO"]),
            )?;
            let normalised = Proj::new_known_crs("EPSG:4326", definition, None)?;
            Ok((normalised, strict))
        }
        match transformations(target.definition()) {
            Ok((normalised, strict)) => Ok(Self {
                target,
                normalised,
                strict,
            }),
            Err(error) => Err(CrsError::NoTransformation {
                name: target.name().to_owned(),
                detail: error.to_string(),
            }),
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
        let convert = |proj: &Proj| {
            let outside = |detail: String| CrsError::OutsideDomain {
                name: self.target.name().to_owned(),
                longitude,
                latitude,
                detail,
            };
            let (x, y): (f64, f64) = proj
                .convert((longitude, latitude))
                .map_err(|error| outside(error.to_string()))?;
            if x.is_finite() && y.is_finite() {
                Ok(Coord { x, y })
            } else {
                Err(outside(String::new()))
            }
        };
        let normalised = convert(&self.normalised)?;
        let strict = convert(&self.strict)?;
        let swapped = Coord {
            x: strict.y,
            y: strict.x,
        };
        if is_same(normalised, strict) || is_same(normalised, swapped) {
            Ok(normalised)
        } else {
            Err(CrsError::Guess {
                name: self.target.name().to_owned(),
                longitude,
                latitude,
            })
        }
    }
}

fn is_same(left: Coord<f64>, right: Coord<f64>) -> bool {
    let scale = left.x.abs().max(left.y.abs()).max(1.0);
    (left.x - right.x).abs() <= SAME * scale && (left.y - right.y).abs() <= SAME * scale
}
