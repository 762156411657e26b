//! Where a building or an opening stands.

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
