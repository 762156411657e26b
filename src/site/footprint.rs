//! The outline of a building on the ground.

use geo::{Distance, Haversine, LineString, Point, Polygon, Validation};

use super::Location;
use crate::statement::{StatedPair, StatementError, Table};

/// The outline of a building: three corners or more, the last one joined to the first.
#[derive(Clone, Debug, PartialEq)]
pub struct Footprint {
    corners: Vec<Location>,
}

/// Corners that are not the outline of a building.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FootprintError {
    /// Fewer than three.
    #[error("{0} corners do not make an outline")]
    TooFew(usize),
    /// Corners too far apart.
    #[error("it has corners {:.1} km apart", .0 / 1000.0)]
    TooLarge(f64),
    /// Sides that cross, or no area.
    #[error("it is not the outline of a building: {0}")]
    NotAnOutline(String),
}

/// No corner of a building lies farther than this from the point that locates it, or than
/// twice this from another: a slip of longitude and latitude, or another building's outline.
const FARTHEST_METRES: f64 = 1000.0;

const CORNERS: &str = "[[-74.0336, 40.7401], [-74.0334, 40.7401], [-74.0334, 40.7399]]: three corners or more in order, each longitude and latitude in degrees";

impl Footprint {
    /// The outline through corners in order; the first may be repeated at the end.
    ///
    /// # Errors
    /// [`FootprintError`] where they do not bound one area of a building's size.
    ///
    /// ```
    /// use sillmark::site::{Footprint, Location};
    /// let corner = |east: f64, north: f64| Location::from_degrees(-74.0336 + east, 40.74 + north);
    /// let corners = vec![corner(0.0, 0.0)?, corner(2e-4, 0.0)?, corner(2e-4, 1e-4)?];
    /// assert_eq!(Footprint::new(corners)?.corners().len(), 3);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(mut corners: Vec<Location>) -> Result<Self, FootprintError> {
        if corners.len() > 1 && corners.first() == corners.last() {
            corners.pop();
        }
        let [first, _, _, ..] = *corners.as_slice() else {
            return Err(FootprintError::TooFew(corners.len()));
        };
        let apart = corners.iter().map(|corner| metres(first, *corner));
        let apart = apart.fold(0.0, f64::max);
        if apart > 2.0 * FARTHEST_METRES {
            return Err(FootprintError::TooLarge(apart));
        }
        let ring: LineString<f64> = corners.iter().map(|corner| point(*corner)).collect();
        Polygon::new(ring, Vec::new())
            .check_validation()
            .map_err(|problem| FootprintError::NotAnOutline(problem.to_string()))?;
        Ok(Self { corners })
    }

    /// The corners in order, each once.
    #[must_use]
    pub fn corners(&self) -> &[Location] {
        &self.corners
    }

    /// Reads `footprint` of a `[building]`; `None` where there is none. The first corner may
    /// be repeated at the end.
    ///
    /// # Errors
    /// [`StatementError`] naming the corner, or the whole where it is not the outline of one
    /// building near `location`.
    pub(super) fn read(
        table: &Table<'_, '_>,
        location: Location,
    ) -> Result<Option<Self>, StatementError> {
        let (Some(pairs), Some(whole)) = (table.pairs("footprint")?, table.whole("footprint"))
        else {
            return Ok(None);
        };
        let corners = pairs
            .iter()
            .map(|pair| corner(pair, location))
            .collect::<Result<Vec<_>, _>>()?;
        Self::new(corners)
            .map(Some)
            .map_err(|error| whole.refuse(error.to_string(), CORNERS))
    }
}

fn corner(pair: &StatedPair<'_>, location: Location) -> Result<Location, StatementError> {
    let degrees = |text: &str| text.trim().parse::<f64>().ok();
    let (longitude, latitude) = degrees(pair.first.text())
        .zip(degrees(pair.second.text()))
        .ok_or_else(|| pair.whole.refuse("it is not two numbers", CORNERS))?;
    let corner = Location::from_degrees(longitude, latitude)
        .map_err(|error| pair.whole.refuse(error.to_string(), CORNERS))?;
    let metres = metres(corner, location);
    if metres > FARTHEST_METRES {
        return Err(pair.whole.refuse(
            format!(
                "it lies {:.1} km from the building's location {}, {}",
                metres / 1000.0,
                location.longitude(),
                location.latitude()
            ),
            format!("{CORNERS}, within {FARTHEST_METRES} m of the location"),
        ));
    }
    Ok(corner)
}

fn point(location: Location) -> Point<f64> {
    Point::new(location.longitude(), location.latitude())
}

fn metres(one: Location, other: Location) -> f64 {
    Haversine.distance(point(one), point(other))
}
