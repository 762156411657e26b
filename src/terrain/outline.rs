//! The ground along the walls: adjacent grade from the outline of a building.

use geo::Coord;

use super::grade::Extremes;
use super::grid::{as_float, as_index};
use super::reader::Reader;
use super::{Dem, Gap, Grade, TerrainError};
use crate::site::{Footprint, Location};

/// Points to a cell along the outline.
const POINTS_PER_CELL: f64 = 2.0;

impl Dem {
    /// Lowest and highest ground along the outline of a building, which is what lowest and
    /// highest adjacent grade mean: the ground against the wall.
    ///
    /// 1. The corners are projected into the plane of the raster and joined by straight lines.
    /// 2. Looked at are the corners and points between them, at most half a cell apart, each
    ///    bilinear between the four nearest cell centres.
    ///
    /// A terrain model is an estimate of adjacent grade: it knows no terrace or kerb narrower
    /// than its cells, and where the building was taken out of it the ground under the walls
    /// is itself interpolated.
    ///
    /// # Errors
    /// [`TerrainError`] where the file cannot be read; the inner [`Gap`] where no point of
    /// the outline has ground. How many points had none is in [`Grade::without_value`].
    pub fn grade_along(&self, footprint: &Footprint) -> Result<Result<Grade, Gap>, TerrainError> {
        let corners = footprint.corners().iter();
        let corners = corners.map(|corner| self.frame_origin(*corner));
        let corners = corners.collect::<Result<Vec<_>, _>>()?;
        let mut found = Extremes::default();
        let mut reader = self.reader();
        for (position, start) in corners.iter().enumerate() {
            let end = corners.get((position + 1) % corners.len());
            match (start, end.copied().flatten()) {
                (Some(start), Some(end)) => self.along(*start, end, &mut reader, &mut found)?,
                (Some(start), None) => found.add(reader.metres_at(*start)?),
                (None, _) => found.add(Err(Gap::Outside)),
            }
        }
        Ok(found.grade(self))
    }

    /// Looks at the points of a side, its start included and its end not.
    fn along(
        &self,
        start: Coord<f64>,
        end: Coord<f64>,
        reader: &mut Reader<'_>,
        found: &mut Extremes,
    ) -> Result<(), TerrainError> {
        let cells = self.grid.unbounded_position(end) - self.grid.unbounded_position(start);
        let count = as_index((POINTS_PER_CELL * cells.x.hypot(cells.y)).ceil()).max(1);
        for index in 0..count {
            let share = as_float(index) / as_float(count);
            found.add(reader.metres_at(start + (end - start) * share)?);
        }
        Ok(())
    }

    /// `None` where the raster's coordinates cannot express the place.
    fn frame_origin(&self, corner: Location) -> Result<Option<Coord<f64>>, TerrainError> {
        Ok(self.frame(corner)?.map(|frame| frame.origin()))
    }
}
