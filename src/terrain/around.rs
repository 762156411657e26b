//! Ground and grade of one place, asked together.

use super::{Gap, Grade, Ground, Terrain, TerrainError};
use crate::quantity::Length;
use crate::site::Location;

/// The ground at a place and the lowest and highest ground around it.
#[derive(Clone, Debug, PartialEq)]
pub struct Around {
    /// As [`Terrain::ground_at`].
    pub ground: Result<Ground, Gap>,
    /// As [`Terrain::grade_around`].
    pub grade: Result<Grade, Gap>,
}

impl Terrain {
    /// What [`ground_at`](Self::ground_at) and [`grade_around`](Self::grade_around) say, for
    /// the price of one projection to a raster. Each is answered by the finest raster that
    /// can, which need not be the same.
    ///
    /// # Errors
    /// As the two.
    pub fn around(&self, location: Location, radius: Length) -> Result<Around, TerrainError> {
        let mut found = Around {
            ground: Err(Gap::Outside),
            grade: Err(Gap::Outside),
        };
        for dem in self.dems() {
            let frame = dem.frame(location)?;
            // A place at the end of a projection may have a point there and no frame.
            let point = match &frame {
                Some(frame) => Some(frame.origin()),
                None => dem.point(location)?,
            };
            if let Some(point) = point {
                ask(&mut found.ground, || dem.ground(point))?;
            }
            if let Some(frame) = &frame {
                ask(&mut found.grade, || dem.grade(frame, radius))?;
            }
            if found.ground.is_ok() && found.grade.is_ok() {
                break;
            }
        }
        Ok(found)
    }
}

/// Asks one raster more, where none before it could answer.
fn ask<T>(
    found: &mut Result<T, Gap>,
    raster: impl FnOnce() -> Result<Result<T, Gap>, TerrainError>,
) -> Result<(), TerrainError> {
    if found.is_err() {
        match raster()? {
            Err(Gap::Outside) => {}
            answer => *found = answer,
        }
    }
    Ok(())
}
