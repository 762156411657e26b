//! Several rasters as one terrain.

use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

use super::tiles::{KEPT_BYTES, Tiles};
use super::{Dem, Gap, Grade, Ground, TerrainError};
use crate::quantity::{Length, unit::meter};
use crate::site::{Footprint, Location};

/// Cells in degrees get smaller towards the poles: two rasters of one product differ by less
/// than this factor, two products by more.
const SAME_SIZE: f64 = 1.05;

/// Elevation rasters, the finest first. The first one that has ground at a place answers.
///
/// They keep the tiles they decoded in one memory of 32 MiB, or what
/// [`keeping`](Self::keeping) says.
pub struct Terrain {
    dems: Vec<Dem>,
    tiles: Rc<RefCell<Tiles>>,
}

impl Default for Terrain {
    fn default() -> Self {
        Self::new(Vec::new())
    }
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
        let tiles = Rc::new(RefCell::new(Tiles::keeping(KEPT_BYTES)));
        let mut dems: Vec<Dem> = dems.into_iter().map(|(_, dem)| dem).collect();
        for (number, dem) in (0..).zip(&mut dems) {
            dem.share_tiles(&tiles, number);
        }
        Self { dems, tiles }
    }

    /// Keeps at most so many bytes of decoded tiles, of all rasters together; those not used
    /// for longest are given up first. One tile is kept whatever its size.
    #[must_use]
    pub fn keeping(self, bytes: usize) -> Self {
        self.tiles.borrow_mut().keep(bytes);
        self
    }

    /// Expects places in the order of [`tile_at`](Self::tile_at), so that the tiles behind are
    /// given up first. The answers are the same in any order.
    #[must_use]
    pub fn in_order(self) -> Self {
        self.tiles.borrow_mut().expect_order();
        self
    }

    /// Bytes of tiles that are kept.
    pub(super) fn kept_bytes(&self) -> usize {
        self.tiles.borrow().limit()
    }

    /// How many tiles were decoded so far.
    #[must_use]
    pub fn tiles_decoded(&self) -> u64 {
        self.tiles.borrow().decoded()
    }

    /// The raster, counted from the finest, that a [`Ground`] or a [`Grade`] of this terrain
    /// names as its source; `None` for the source of another terrain.
    #[must_use]
    pub fn raster_number(&self, source: &Arc<str>) -> Option<u16> {
        let same = |dem: &Dem| Arc::ptr_eq(dem.source(), source);
        let position = self.dems.iter().position(same)?;
        u16::try_from(position).ok()
    }

    /// The source that a raster's number stands for; `None` where there are fewer rasters.
    #[must_use]
    pub fn source(&self, number: u16) -> Option<&Arc<str>> {
        self.dems.get(usize::from(number)).map(|dem| dem.source())
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
