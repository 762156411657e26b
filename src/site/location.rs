//! Where a building or an opening stands.

use geo::{Distance, Haversine};

use crate::quantity::{Length, unit::meter};

/// A point on the ground, in degrees of WGS 84 (EPSG:4326).
///
/// The two numbers are named, never positional, so that longitude and latitude cannot
/// change places.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Location {
    longitude: f64,
    latitude: f64,
}

/// Degrees that are not a point on the earth.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum LocationError {
    /// The longitude is not between −180 and 180.
    #[error("longitude {0} is not between -180 and 180 degrees")]
    Longitude(f64),
    /// The latitude is not between −90 and 90.
    #[error("latitude {0} is not between -90 and 90 degrees")]
    Latitude(f64),
}

impl Location {
    /// The point at `longitude` degrees east and `latitude` degrees north.
    ///
    /// # Errors
    /// [`LocationError`] where a number is not finite or out of range.
    ///
    /// ```
    /// use sillmark::site::Location;
    /// let place = Location::from_degrees(-74.0335, 40.74)?;
    /// assert_eq!(place.latitude(), 40.74);
    /// assert!(Location::from_degrees(40.74, -274.0).is_err());
    /// # Ok::<(), sillmark::site::LocationError>(())
    /// ```
    pub fn from_degrees(longitude: f64, latitude: f64) -> Result<Self, LocationError> {
        if !(-180.0..=180.0).contains(&longitude) {
            Err(LocationError::Longitude(longitude))
        } else if !(-90.0..=90.0).contains(&latitude) {
            Err(LocationError::Latitude(latitude))
        } else {
            Ok(Self {
                longitude,
                latitude,
            })
        }
    }

    /// The distance to another place along a sphere of 6371 km (the earth's mean radius): good
    /// to half a percent, for telling near from far only.
    ///
    /// ```
    /// use sillmark::{quantity::unit::kilometer, site::Location};
    /// // A degree of latitude: 6371 km × π / 180 = 111.19 km.
    /// let (south, north) = (Location::from_degrees(-74.0, 40.0)?, Location::from_degrees(-74.0, 41.0)?);
    /// assert!((south.distance_to(north).get::<kilometer>() - 111.19).abs() < 0.01);
    /// # Ok::<(), sillmark::site::LocationError>(())
    /// ```
    #[must_use]
    pub fn distance_to(self, other: Self) -> Length {
        let point = |place: Self| geo::Point::new(place.longitude, place.latitude);
        Length::new::<meter>(Haversine.distance(point(self), point(other)))
    }

    /// Degrees east of Greenwich.
    #[must_use]
    pub const fn longitude(self) -> f64 {
        self.longitude
    }

    /// Degrees north of the equator.
    #[must_use]
    pub const fn latitude(self) -> f64 {
        self.latitude
    }
}
