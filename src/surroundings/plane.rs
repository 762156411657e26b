//! Places in metres about the site, and back to degrees.

use geo::{Coord, MapCoords};

use crate::crs::{CrsDefinition, CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::site::Location;

/// The tangent plane at the site.
pub(super) struct Plane {
    projector: Projector,
    frame: LocalFrame,
}

impl Plane {
    pub(super) fn at(location: Location) -> Result<Self, CrsError> {
        let projector = Projector::new(CrsDefinition::from_text("EPSG:4326")?.horizontal)?;
        let frame = LocalFrame::new(&projector, location)?;
        Ok(Self { projector, frame })
    }

    /// Metres east and north of the site.
    pub(super) fn metres(&self, place: Location) -> Result<Coord<f64>, CrsError> {
        Ok(self.frame.metres(self.projector.project(place)?))
    }
}

/// From the coordinates of a layer to degrees of WGS 84, point by point and exactly.
pub(super) struct Degrees(Projector);

impl Degrees {
    pub(super) fn from(crs: &HorizontalCrs) -> Result<Self, CrsError> {
        Projector::new(crs.clone()).map(Self)
    }

    pub(super) fn of<Shape>(&self, shape: &Shape) -> Result<Shape::Output, CrsError>
    where
        Shape: MapCoords<f64, f64>,
    {
        shape.try_map_coords(|point| {
            let place = self.0.location(point.x, point.y)?;
            Ok(Coord {
                x: place.longitude(),
                y: place.latitude(),
            })
        })
    }
}
