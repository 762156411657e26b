//! One elevation raster.

use std::cell::RefCell;
use std::ops::Deref;
use std::path::Path;
use std::rc::Rc;
use std::sync::Arc;

use geo::Coord;

use super::tiles::Tiles;
use super::{DemStatement, Gap, Ground, Raster, RasterRole, TerrainError, statement};
use crate::quantity::{Elevation, Length, VerticalDatum, unit::meter};
use crate::site::Location;

/// An elevation raster with its unit, datum and coordinate reference system settled: the
/// ground, or a water surface.
///
/// Not `Send`: a thread opens its own.
pub struct Dem {
    raster: Raster,
    datum: VerticalDatum,
}

/// An elevation raster is a raster that counts from a datum.
impl Deref for Dem {
    type Target = Raster;

    fn deref(&self) -> &Raster {
        &self.raster
    }
}

impl Dem {
    /// Opens a terrain model of one band. What it does not say, `statement` has to say; what
    /// both say has to agree.
    ///
    /// # Errors
    /// [`TerrainError`] with the path and, where something is missing, the option that
    /// states it.
    pub fn open(path: &Path, statement: &DemStatement) -> Result<Self, TerrainError> {
        Self::open_as(path, statement, RasterRole::Terrain)
    }

    /// Opens a raster of water-surface elevations, as [`open`](Self::open): its messages name
    /// the options of a surface.
    ///
    /// # Errors
    /// As [`open`](Self::open).
    pub fn open_surface(path: &Path, statement: &DemStatement) -> Result<Self, TerrainError> {
        Self::open_as(path, statement, RasterRole::Surface)
    }

    fn open_as(
        path: &Path,
        statement: &DemStatement,
        role: RasterRole,
    ) -> Result<Self, TerrainError> {
        let (raster, vertical) = Raster::open(path, statement, role)?;
        let datum = statement::datum(path, vertical.as_ref(), statement, role)?;
        Ok(Self { raster, datum })
    }

    /// The datum of its heights.
    #[must_use]
    pub const fn datum(&self) -> VerticalDatum {
        self.datum
    }

    /// The ground at a place, bilinear between the four nearest cell centres.
    ///
    /// In the outer half cell of the raster the nearest cells stand for those that are
    /// missing. A cell without a value makes a [`Gap::Void`] wherever it has a share.
    ///
    /// # Errors
    /// [`TerrainError`] where the file cannot be read or the transformation is not known;
    /// the inner [`Gap`] where there is no ground.
    pub fn ground_at(&self, location: Location) -> Result<Result<Ground, Gap>, TerrainError> {
        Ok(match self.point(location)? {
            Some(point) => self.ground(point)?,
            None => Err(Gap::Outside),
        })
    }

    /// The ground at a point of the raster's plane.
    pub(super) fn ground(&self, point: Coord<f64>) -> Result<Result<Ground, Gap>, TerrainError> {
        let Some((column, row)) = self.cells_around(point) else {
            return Ok(Err(Gap::Outside));
        };
        let mut reader = self.reader();
        let Some(metres) = reader.bilinear(column, row)? else {
            return Ok(Err(Gap::Void));
        };
        Ok(Ok(Ground {
            elevation: self.elevation(metres),
            no_data_nearby: reader.no_data_nearby(column, row)?,
            at_rim: column.at_rim || row.at_rim,
            source: Arc::clone(self.source()),
        }))
    }

    /// Keeps its tiles among those of other rasters from now on.
    pub(super) fn share_tiles(&mut self, tiles: &Rc<RefCell<Tiles>>, number: u32) {
        self.raster.share_tiles(tiles, number);
    }

    pub(super) fn elevation(&self, metres: f64) -> Elevation {
        Elevation::new(Length::new::<meter>(metres), self.datum)
    }
}
