//! The ground around a place, asked in metres.

use super::{Dem, Terrain, TerrainError};
use crate::crs::LocalFrame;
use crate::quantity::{Elevation, Length, VerticalDatum, unit::meter};
use crate::site::Location;

/// The ground around a place, by metres east and north of it on the tangent plane.
///
/// The finest raster that has ground at the place gives datum and cell size. Beyond its rim
/// the others of the same datum answer, so that tiles of one product are one terrain.
pub struct GroundPlane<'terrain> {
    /// The deciding raster first.
    rasters: Vec<(&'terrain Dem, LocalFrame)>,
    datum: VerticalDatum,
    cell: Length,
}

impl Terrain {
    /// The ground around a place; `None` where no raster has ground at the place itself.
    ///
    /// # Errors
    /// [`TerrainError`] where a file cannot be read or a transformation is not known.
    pub fn plane_at(&self, location: Location) -> Result<Option<GroundPlane<'_>>, TerrainError> {
        let mut decides = None;
        for (position, dem) in self.dems().iter().enumerate() {
            if dem.ground_at(location)?.is_ok() {
                decides = Some((position, dem));
                break;
            }
        }
        let Some((decides, dem)) = decides else {
            return Ok(None);
        };
        let mut rasters = Vec::new();
        let rest = self.dems().iter().enumerate();
        let rest =
            rest.filter(|(position, other)| *position != decides && other.datum() == dem.datum());
        for other in std::iter::once(dem).chain(rest.map(|(_, other)| other)) {
            if let Some(frame) = other.frame(location)? {
                rasters.push((other, frame));
            }
        }
        Ok(Some(GroundPlane {
            rasters,
            datum: dem.datum(),
            cell: dem.cell_size(),
        }))
    }
}

impl GroundPlane<'_> {
    /// Side of a cell of the deciding raster.
    #[must_use]
    pub const fn cell(&self) -> Length {
        self.cell
    }

    /// File name of the deciding raster.
    #[must_use]
    pub fn source(&self) -> &str {
        self.rasters.first().map_or("", |(dem, _)| dem.name())
    }

    /// A height in metres as an elevation on the rasters' datum.
    #[must_use]
    pub fn elevation(&self, metres: f64) -> Elevation {
        Elevation::new(Length::new::<meter>(metres), self.datum)
    }

    /// Metres of ground at a point, bilinear; `None` where no raster has a value.
    ///
    /// # Errors
    /// [`TerrainError`] where a file cannot be read.
    pub fn metres(&self, east: f64, north: f64) -> Result<Option<f64>, TerrainError> {
        for (dem, frame) in &self.rasters {
            if let Ok(metres) = dem.metres_at(frame.at(east, north))? {
                return Ok(Some(metres));
            }
        }
        Ok(None)
    }

    /// The value of the cell that holds a point, in the unit that its file stores; `None`
    /// where no raster has a value.
    ///
    /// # Errors
    /// [`TerrainError`] where a file cannot be read.
    pub fn stored(&self, east: f64, north: f64) -> Result<Option<(f64, Length)>, TerrainError> {
        for (dem, frame) in &self.rasters {
            if let Some(metres) = dem.cell_metres_at(frame.at(east, north))? {
                let unit = dem.unit();
                return Ok(Some((
                    unit.read(Length::new::<meter>(metres)),
                    unit.length(1.0),
                )));
            }
        }
        Ok(None)
    }
}
