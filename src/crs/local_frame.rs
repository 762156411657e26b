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
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LocalFrame {
    origin: Coord<f64>,
    east: Coord<f64>,
    north: Coord<f64>,
}

/// Semi-major axis of the WGS 84 ellipsoid, metres, and its flattening (NIMA TR8350.2,
/// table 3.1).
const SEMI_MAJOR: f64 = 6_378_137.0;
const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// Length of the step that the differences are taken over, metres.
const STEP: f64 = 10.0;

impl LocalFrame {
    /// The frame at a place.
    ///
    /// # Errors
    /// As [`Projector::project`].
    pub fn new(projector: &Projector, location: Location) -> Result<Self, CrsError> {
        let (longitude, latitude) = (location.longitude(), location.latitude());
        let origin = projector.project(location)?;
        let sine = latitude.to_radians().sin();
        let squared_eccentricity = FLATTENING * (2.0 - FLATTENING);
        let narrowing = 1.0 - squared_eccentricity * sine * sine;
        let prime_vertical = SEMI_MAJOR / narrowing.sqrt();
        let meridian = SEMI_MAJOR * (1.0 - squared_eccentricity) / narrowing.powf(1.5);
        // Towards the middle of the map, so as not to step over a pole or the antimeridian.
        let (east, north) = (-STEP.copysign(longitude), -STEP.copysign(latitude));
        let cosine = latitude.to_radians().cos().max(1e-9);
        let along = (east / (prime_vertical * cosine)).to_degrees();
        let up = (north / meridian).to_degrees();
        let moved_east = projector.project_degrees(longitude + along, latitude)?;
        let moved_north = projector.project_degrees(longitude, latitude + up)?;
        Ok(Self {
            origin,
            east: (moved_east - origin) / east,
            north: (moved_north - origin) / north,
        })
    }

    /// The place itself, in the system's coordinates.
    #[must_use]
    pub const fn origin(&self) -> Coord<f64> {
        self.origin
    }

    /// The point so many metres east and north of the place.
    #[must_use]
    pub fn at(&self, east: f64, north: f64) -> Coord<f64> {
        self.origin + self.east * east + self.north * north
    }

    /// How many metres east and north of the place a point lies.
    #[must_use]
    pub fn metres(&self, point: Coord<f64>) -> Coord<f64> {
        let moved = point - self.origin;
        let area = self.east.x * self.north.y - self.east.y * self.north.x;
        Coord {
            x: (moved.x * self.north.y - moved.y * self.north.x) / area,
            y: (self.east.x * moved.y - self.east.y * moved.x) / area,
        }
    }

    /// A box in the system's coordinates that holds every point nearer than `margin`.
    #[must_use]
    pub fn box_around(&self, margin: Length) -> Rect<f64> {
        // One per cent for what the tangent plane leaves out.
        let margin = 1.01 * margin.get::<meter>();
        let half = Coord {
            x: margin * self.east.x.hypot(self.north.x),
            y: margin * self.east.y.hypot(self.north.y),
        };
        Rect::new(self.origin - half, self.origin + half)
    }
}
