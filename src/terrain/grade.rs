//! The ground around a building: lowest and highest adjacent grade.

use std::f64::consts::TAU;
use std::sync::Arc;

use super::grid::{as_float, as_index};
use super::{Dem, Gap, TerrainError};
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
        let Some(frame) = self.frame(location)? else {
            return Ok(Err(Gap::Outside));
        };
        let radius = radius.get::<meter>().max(0.0);
        let mut found = Extremes::default();
        found.add(self.metres_at(frame.origin())?);
        let spacing = self.cell_size().get::<meter>();
        let count = as_index((TAU * radius / spacing).ceil()).max(RIM_POINTS);
        for index in 0..count {
            let (sine, cosine) = (TAU * as_float(index) / as_float(count)).sin_cos();
            found.add(self.metres_at(frame.at(radius * cosine, radius * sine))?);
        }
        if let Some([columns, rows]) = self.cells_within(&frame, radius) {
            for row in rows {
                for column in columns.clone() {
                    let centre = frame.metres(self.grid.centre(column, row));
                    if centre.x.hypot(centre.y) <= radius {
                        let height = self.cell(column, row)?;
                        let height = Some(height).filter(|height| !height.is_nan());
                        found.add(height.ok_or(Gap::Void));
                    }
                }
            }
        }
        Ok(found.grade(self))
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
            Ok(height) => {
                let (lowest, highest) = self.range.unwrap_or((height, height));
                self.range = Some((lowest.min(height), highest.max(height)));
            }
            Err(gap) => {
                self.without_value += 1;
                self.outside += usize::from(gap == Gap::Outside);
            }
        }
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
