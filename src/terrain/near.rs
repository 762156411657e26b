//! Roughly where a place lies: for the order of places, not for heights.

use std::collections::HashMap;

use foldhash::fast::FixedState;
use geo::Coord;

use super::TerrainError;
use crate::site::Location;

/// The plane of a raster as straight lines within cells of a tenth of a degree, which is good
/// to a few metres and a tenth of the price of a transformation.
#[derive(Default)]
pub(super) struct Near {
    cells: HashMap<(i32, i32), Option<Cell>, FixedState>,
}

/// The middle of a cell in the raster's plane, and how far a degree goes there.
#[derive(Clone, Copy)]
struct Cell {
    middle: Coord<f64>,
    east: Coord<f64>,
    north: Coord<f64>,
}

/// Cells in a degree.
const PER_DEGREE: f64 = 10.0;

/// Cells that are kept: more than a country has.
const KEPT: usize = 1 << 14;

impl Near {
    /// The point of a place; `None` where `transform` has none for the cell.
    pub(super) fn point(
        &mut self,
        location: Location,
        transform: impl Fn(Location) -> Result<Option<Coord<f64>>, TerrainError>,
    ) -> Result<Option<Coord<f64>>, TerrainError> {
        let (east, north) = (
            location.longitude() * PER_DEGREE,
            location.latitude() * PER_DEGREE,
        );
        #[allow(clippy::cast_possible_truncation)] // at most 1800
        let key = (east.floor() as i32, north.floor() as i32);
        let cell = if let Some(cell) = self.cells.get(&key) {
            *cell
        } else {
            if self.cells.len() >= KEPT {
                self.cells.clear();
            }
            let cell = Cell::measure(east.floor(), north.floor(), &transform)?;
            self.cells.insert(key, cell);
            cell
        };
        let Some(cell) = cell else {
            return transform(location);
        };
        let (right, up) = (east - east.floor() - 0.5, north - north.floor() - 0.5);
        Ok(Some(cell.middle + cell.east * right + cell.north * up))
    }
}

impl Cell {
    fn measure(
        west: f64,
        south: f64,
        transform: &impl Fn(Location) -> Result<Option<Coord<f64>>, TerrainError>,
    ) -> Result<Option<Self>, TerrainError> {
        let at = |right: f64, up: f64| {
            let (longitude, latitude) = ((west + right) / PER_DEGREE, (south + up) / PER_DEGREE);
            match Location::from_degrees(longitude, latitude) {
                Ok(location) => transform(location),
                Err(_) => Ok(None),
            }
        };
        let (Some(middle), Some(left), Some(right), Some(below), Some(above)) = (
            at(0.5, 0.5)?,
            at(0.0, 0.5)?,
            at(1.0, 0.5)?,
            at(0.5, 0.0)?,
            at(0.5, 1.0)?,
        ) else {
            return Ok(None);
        };
        Ok(Some(Self {
            middle,
            east: right - left,
            north: above - below,
        }))
    }
}
