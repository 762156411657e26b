//! Several rasters as one terrain.

use super::{Dem, Gap, Grade, Ground, TerrainError};
use crate::quantity::{Length, unit::meter};
use crate::site::{Footprint, Location};

/// Cells in degrees get smaller towards the poles: two rasters of one product differ by less
/// than this factor, two products by more.
const SAME_SIZE: f64 = 1.05;

/// Elevation rasters, the finest first. The first one that has ground at a place answers.
#[derive(Default)]
pub struct Terrain {
    dems: Vec<Dem>,
}

impl Terrain {
    /// Orders the rasters by their cells, finest first. Those of about one size stay in the
    /// order given.
    #[must_use]
    pub fn new(dems: Vec<Dem>) -> Self {
        let mut dems: Vec<_> = dems.into_iter().enumerate().collect();
        let size = |dem: &(usize, Dem)| dem.1.cell_size().get::<meter>();
        dems.sort_by(|left, right| size(left).total_cmp(&size(right)));
        for same in dems.chunk_by_mut(|left, right| size(right) <= SAME_SIZE * size(left)) {
            same.sort_by_key(|(given, _)| *given);
        }
        Self {
            dems: dems.into_iter().map(|(_, dem)| dem).collect(),
        }
    }

    /// The rasters, finest first.
    #[must_use]
    pub fn dems(&self) -> &[Dem] {
        &self.dems
    }

    /// The ground at a place, from the finest raster that has it.
    ///
    /// # Errors
    /// As [`Dem::ground_at`]. The gap is [`Gap::Void`] where at least one raster covers the
    /// place.
    pub fn ground_at(&self, location: Location) -> Result<Result<Ground, Gap>, TerrainError> {
        self.first(|dem| dem.ground_at(location))
    }

    /// Lowest and highest ground within `radius` of a place, from the finest raster that has
    /// ground there.
    ///
    /// # Errors
    /// As [`Dem::grade_around`].
    pub fn grade_around(
        &self,
        location: Location,
        radius: Length,
    ) -> Result<Result<Grade, Gap>, TerrainError> {
        self.first(|dem| dem.grade_around(location, radius))
    }

    /// Lowest and highest ground along the outline of a building, from the finest raster that
    /// has ground there.
    ///
    /// # Errors
    /// As [`Dem::grade_along`].
    pub fn grade_along(&self, footprint: &Footprint) -> Result<Result<Grade, Gap>, TerrainError> {
        self.first(|dem| dem.grade_along(footprint))
    }

    /// Refuses a terrain that does not reach a place at all: wrong files or coordinates.
    /// No terrain at all is fine.
    ///
    /// # Errors
    /// [`TerrainError::DoesNotReach`] with what the rasters cover.
    pub fn require_reach(&self, location: Location) -> Result<(), TerrainError> {
        let mut nearest = None;
        for dem in &self.dems {
            match dem.reach(location)? {
                None => return Ok(()),
                Some(beyond) => nearest = nearest.or(Some(beyond)),
            }
        }
        nearest.map_or(Ok(()), Err)
    }

    fn first<T>(
        &self,
        ask: impl Fn(&Dem) -> Result<Result<T, Gap>, TerrainError>,
    ) -> Result<Result<T, Gap>, TerrainError> {
        let mut gap = Gap::Outside;
        for dem in &self.dems {
            match ask(dem)? {
                Ok(found) => return Ok(Ok(found)),
                Err(Gap::Void) => gap = Gap::Void,
                Err(Gap::Outside) => {}
            }
        }
        Ok(Err(gap))
    }
}
