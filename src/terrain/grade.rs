//! The ground around a building: lowest and highest adjacent grade.

use std::f64::consts::TAU;
use std::ops::Range;
use std::sync::Arc;

use geo::Coord;

use super::disk::Disk;
use super::grid::as_index;
use super::values::Spread;
use super::{Dem, Gap, TerrainError};
use crate::crs::LocalFrame;
use crate::quantity::{Elevation, Length, unit::meter};
use crate::site::Location;

/// Lowest and highest ground around a building.
#[derive(Clone, Debug, PartialEq)]
pub struct Grade {
    /// The lowest ground found.
    pub lowest: Elevation,
    /// The highest ground found.
    pub highest: Elevation,
    /// How many points were looked at.
    pub samples: usize,
    /// How many of them had no value or lay outside the raster.
    pub without_value: usize,
    /// File name of the raster that answered.
    pub source: Arc<str>,
}

/// Fewest points on the rim of the disk.
const RIM_POINTS: usize = 16;

impl Dem {
    /// Lowest and highest ground within `radius` of a place.
    ///
    /// Looked at are the place itself, every cell centre within the disk, and points along
    /// its rim one cell apart but at least sixteen. Between cell centres the surface is
    /// bilinear, so its extremes on the disk lie at a centre or on the rim; on the rim they
    /// are caught to within the spacing of the points. The radius is in metres on the
    /// ground in every coordinate reference system.
    ///
    /// # Errors
    /// [`TerrainError`] where the file cannot be read; the inner [`Gap`] where no point of
    /// the disk has ground.
    pub fn grade_around(
        &self,
        location: Location,
        radius: Length,
    ) -> Result<Result<Grade, Gap>, TerrainError> {
        Ok(match self.frame(location)? {
            Some(frame) => self.grade(&frame, radius)?,
            None => Err(Gap::Outside),
        })
    }

    /// The grade within a radius of a frame's place.
    pub(super) fn grade(
        &self,
        frame: &LocalFrame,
        radius: Length,
    ) -> Result<Result<Grade, Gap>, TerrainError> {
        let radius = radius.get::<meter>().max(0.0);
        let mut found = Extremes::default();
        let mut reader = self.reader();
        found.add(reader.metres_at(frame.origin())?);
        let spacing = self.cell_size().get::<meter>();
        let count = as_index((TAU * radius / spacing).ceil()).max(RIM_POINTS);
        let area = self.cells_within(frame, radius);
        if let Some(range) = self.rim_of_patch(frame, radius, count, area.as_ref())? {
            found.add_all(Some(range), count, 0);
        } else {
            for [cosine, sine] in self.rim.borrow_mut().directions(count) {
                found.add(reader.metres_at(frame.at(radius * cosine, radius * sine))?);
            }
        }
        if let Some(area) = area {
            self.add_centres(frame, radius, area, &mut found)?;
        }
        Ok(found.grade(self))
    }

    /// The outermost heights along the rim, where all cells around lie in one tile and have a
    /// value; `None` where each point has to be looked at for itself.
    fn rim_of_patch(
        &self,
        frame: &LocalFrame,
        radius: f64,
        count: usize,
        area: Option<&[Range<usize>; 2]>,
    ) -> Result<Option<(f64, f64)>, TerrainError> {
        let Some([columns, rows]) = area else {
            return Ok(None);
        };
        // A cell more on each side, since a point lies between four.
        let wider = |range: &Range<usize>, count: usize| {
            Some(range.start.checked_sub(1)?..range.end + 1).filter(|wider| wider.end <= count)
        };
        let (Some(columns), Some(rows)) = (
            wider(columns, self.grid.columns),
            wider(rows, self.grid.rows),
        ) else {
            return Ok(None);
        };
        let tile = self.tile(self.tiling().holding(columns.start, rows.start))?;
        let Some(patch) = tile.patch(&columns, &rows) else {
            return Ok(None);
        };
        let position = |point| self.grid.unbounded_position(point);
        let corner = position(frame.origin());
        let (east, north) = (
            position(frame.at(radius, 0.0)) - corner,
            position(frame.at(0.0, radius)) - corner,
        );
        // Positions count from the outer corner of the first cell, cells from its middle.
        let middle = corner - Coord { x: 0.5, y: 0.5 };
        let mut range = (f64::INFINITY, f64::NEG_INFINITY);
        for [cosine, sine] in self.rim.borrow_mut().directions(count) {
            let Some(value) = patch.between(middle + east * cosine + north * sine) else {
                return Ok(None);
            };
            range = (range.0.min(value), range.1.max(value));
        }
        Ok(Some((self.metres(range.0), self.metres(range.1))))
    }

    /// Looks at the cell centres within a radius, tile by tile.
    fn add_centres(
        &self,
        frame: &LocalFrame,
        radius: f64,
        area: [Range<usize>; 2],
        found: &mut Extremes,
    ) -> Result<(), TerrainError> {
        let mut spread = Spread::default();
        let [columns, rows] = area.clone();
        let disk = Disk::new(&self.grid, frame, radius, area);
        for index in self.tiling().over(&columns, &rows) {
            let tile = self.tile(index)?;
            for row in tile.window().rows_among(&rows) {
                let columns = tile.window().columns_among(&disk.columns(row));
                if !columns.is_empty() {
                    tile.survey(row, &columns, &mut spread);
                }
            }
        }
        // A stored value and its height grow together, or against each other.
        let range = spread.range();
        let range = range.map(|(one, other)| (self.metres(one), self.metres(other)));
        found.add_all(range, spread.cells(), spread.voids());
        Ok(())
    }
}

/// Heights looked at so far.
#[derive(Default)]
pub(super) struct Extremes {
    range: Option<(f64, f64)>,
    samples: usize,
    without_value: usize,
    outside: usize,
}

impl Extremes {
    pub(super) fn add(&mut self, height: Result<f64, Gap>) {
        self.samples += 1;
        match height {
            Ok(height) => self.widen(height),
            Err(gap) => {
                self.without_value += 1;
                self.outside += usize::from(gap == Gap::Outside);
            }
        }
    }

    /// Adds so many points, of which so many have no value, by the two outermost heights.
    fn add_all(&mut self, outermost: Option<(f64, f64)>, cells: usize, voids: usize) {
        self.samples += cells;
        self.without_value += voids;
        if let Some((one, other)) = outermost {
            self.widen(one);
            self.widen(other);
        }
    }

    fn widen(&mut self, height: f64) {
        let (lowest, highest) = self.range.unwrap_or((height, height));
        self.range = Some((lowest.min(height), highest.max(height)));
    }

    /// The grade, or why there is none.
    pub(super) fn grade(self, dem: &Dem) -> Result<Grade, Gap> {
        let Some((lowest, highest)) = self.range else {
            return Err(if self.outside == self.samples {
                Gap::Outside
            } else {
                Gap::Void
            });
        };
        Ok(Grade {
            lowest: dem.elevation(lowest),
            highest: dem.elevation(highest),
            samples: self.samples,
            without_value: self.without_value,
            source: Arc::clone(dem.source()),
        })
    }
}
