//! Ground at many points around one place: for drawings.

use geo::Coord;

use super::{Gap, Terrain, TerrainError};
use crate::quantity::Elevation;
use crate::site::Location;

/// The ground at one of many points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The elevation, on the datum of its raster.
    pub elevation: Elevation,
    /// The raster that answered, counted from the finest ([`Terrain::dems`]).
    pub raster: usize,
}

impl Terrain {
    /// The ground at points so many metres east and north of a place, each bilinear as
    /// [`ground_at`](Self::ground_at) and from the finest raster that has ground there; `None`
    /// where none has.
    ///
    /// The points are put into the plane of each raster by its tangent plane at the place: within
    /// a kilometre good to a few parts in ten thousand.
    ///
    /// # Errors
    /// As [`ground_at`](Self::ground_at).
    pub fn spots_around(
        &self,
        location: Location,
        offsets: &[Coord<f64>],
    ) -> Result<Vec<Option<Spot>>, TerrainError> {
        let mut found = vec![None; offsets.len()];
        for (raster, dem) in self.dems().iter().enumerate() {
            let Some(frame) = dem.frame(location)? else {
                continue;
            };
            let mut reader = dem.reader();
            let open = found.iter_mut().zip(offsets);
            for (spot, offset) in open.filter(|(spot, _)| spot.is_none()) {
                match reader.metres_at(frame.at(offset.x, offset.y))? {
                    Ok(metres) => {
                        *spot = Some(Spot {
                            elevation: dem.elevation(metres),
                            raster,
                        });
                    }
                    Err(Gap::Void | Gap::Outside) => {}
                }
            }
        }
        Ok(found)
    }
}
