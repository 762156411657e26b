//! Metres around a place, in the coordinates of any system.

use geo::{Coord, Rect};

use super::{CrsError, Projector};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// The tangent plane at a place: how far one metre east and one metre north go in the
/// coordinates of a layer or raster.
///
/// It is taken from the projector by differences over ten metres, so that degrees, survey
/// feet, the stretch of a Mercator map and the turn of its grid are all in it. Within a
/// kilometre it is good to a few parts in ten thousand.
///
/// The place itself is exact. How far a metre goes is measured at the corners of a cell of
/// 0.01 degrees and interpolated: right to two parts in ten million of what it is at the place
/// itself (0.2 mm at one kilometre). Beyond 80 degrees of latitude, and where a cell does not
/// keep to that, it is measured at the place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LocalFrame {
    origin: Coord<f64>,
    metres: Metres,
}

/// How far one metre goes in the coordinates of a system.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Metres {
    pub(super) east: Coord<f64>,
    pub(super) north: Coord<f64>,
}

/// Semi-major axis of the WGS 84 ellipsoid, metres, and its flattening (NIMA TR8350.2,
/// table 3.1).
const SEMI_MAJOR: f64 = 6_378_137.0;
const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// Length of the step that the differences are taken over, metres.
const STEP: f64 = 10.0;

impl Metres {
    /// Measured at a place whose coordinates are `origin`, stepping away from the sides that
    /// `away_from` has the signs of: towards the middle of the map, so as not to step over a pole
    /// or the antimeridian.
    pub(super) fn measure(
        projector: &Projector,
        degrees: Coord<f64>,
        origin: Coord<f64>,
        away_from: Coord<f64>,
    ) -> Result<Self, CrsError> {
        let (longitude, latitude) = degrees.x_y();
        let (sine, cosine) = latitude.to_radians().sin_cos();
        let squared_eccentricity = FLATTENING * (2.0 - FLATTENING);
        let narrowing = 1.0 - squared_eccentricity * sine * sine;
        let prime_vertical = SEMI_MAJOR / narrowing.sqrt();
        let meridian = SEMI_MAJOR * (1.0 - squared_eccentricity) / narrowing.powf(1.5);
        let (east, north) = (-STEP.copysign(away_from.x), -STEP.copysign(away_from.y));
        let along = (east / (prime_vertical * cosine.max(1e-9))).to_degrees();
        let up = (north / meridian).to_degrees();
        let moved_east = projector.project_degrees(longitude + along, latitude)?;
        let moved_north = projector.project_degrees(longitude, latitude + up)?;
        Ok(Self {
            east: (moved_east - origin) / east,
            north: (moved_north - origin) / north,
        })
    }
}

impl LocalFrame {
    /// The frame at a place.
    ///
    /// # Errors
    /// As [`Projector::project`].
    pub fn new(projector: &Projector, location: Location) -> Result<Self, CrsError> {
        let origin = projector.project(location)?;
        match projector.lattice().metres(projector, location) {
            Some(metres) => Ok(Self { origin, metres }),
            None => Self::measured_from(projector, location, origin),
        }
    }

    /// As [`new`](Self::new), measured at the place itself: three transformations instead of
    /// one.
    ///
    /// # Errors
    /// As [`Projector::project`].
    pub fn measured(projector: &Projector, location: Location) -> Result<Self, CrsError> {
        Self::measured_from(projector, location, projector.project(location)?)
    }

    fn measured_from(
        projector: &Projector,
        location: Location,
        origin: Coord<f64>,
    ) -> Result<Self, CrsError> {
        let degrees = Coord {
            x: location.longitude(),
            y: location.latitude(),
        };
        let metres = Metres::measure(projector, degrees, origin, degrees)?;
        Ok(Self { origin, metres })
    }

    /// The place itself, in the system's coordinates.
    #[must_use]
    pub const fn origin(&self) -> Coord<f64> {
        self.origin
    }

    /// The point so many metres east and north of the place.
    #[must_use]
    pub fn at(&self, east: f64, north: f64) -> Coord<f64> {
        self.origin + self.metres.east * east + self.metres.north * north
    }

    /// How many metres east and north of the place a point lies.
    #[must_use]
    pub fn metres(&self, point: Coord<f64>) -> Coord<f64> {
        let moved = point - self.origin;
        let Metres { east, north } = self.metres;
        let area = east.x * north.y - east.y * north.x;
        Coord {
            x: (moved.x * north.y - moved.y * north.x) / area,
            y: (east.x * moved.y - east.y * moved.x) / area,
        }
    }

    /// A box in the system's coordinates that holds every point nearer than `margin`.
    #[must_use]
    pub fn box_around(&self, margin: Length) -> Rect<f64> {
        // One per cent for what the tangent plane leaves out.
        let margin = 1.01 * margin.get::<meter>();
        let half = Coord {
            x: margin * self.metres.east.x.hypot(self.metres.north.x),
            y: margin * self.metres.east.y.hypot(self.metres.north.y),
        };
        Rect::new(self.origin - half, self.origin + half)
    }
}
