//! Ground heights in the square, on the datum of the threshold.

use geo::Coord;

use crate::assess::Sources;
use crate::quantity::{Elevation, Length, LengthUnit, VerticalDatum, unit::meter};
use crate::site::{Location, Site};
use crate::terrain::{Spot, TerrainError};

/// Points along a side of the grid.
const SIDE: usize = 160;

/// Ground heights at the middles of square cells.
#[derive(Clone, Debug, PartialEq)]
pub struct GroundGrid {
    /// Cells along a side.
    pub side: usize,
    /// The side of a cell.
    pub cell: Length,
    /// Heights on [`Surroundings::datum`](super::Surroundings::datum), row after row from the
    /// north, each from west to east; `None` where the terrain has no value.
    pub heights: Vec<Option<Length>>,
}

impl GroundGrid {
    /// The height of a cell, counted from the north-west; `None` where it has none or lies
    /// outside.
    #[must_use]
    pub fn height(&self, column: usize, row: usize) -> Option<Length> {
        if column >= self.side || row >= self.side {
            return None;
        }
        *self.heights.get(row * self.side + column)?
    }

    /// How many cells have no value.
    #[must_use]
    pub fn void_count(&self) -> usize {
        self.heights
            .iter()
            .filter(|height| height.is_none())
            .count()
    }
}

/// A terrain model, and what was done to its heights.
#[derive(Clone, Debug, PartialEq)]
pub struct RasterUsed {
    /// The file's name.
    pub file: String,
    /// The datum of its heights.
    pub datum: VerticalDatum,
    /// The unit that they are stored in.
    pub unit: LengthUnit,
    /// The side of its cells.
    pub cell: Length,
    /// What the file says of its date; `None` where it says nothing.
    pub dated: Option<String>,
    /// How its heights came onto the datum of the threshold.
    pub shift: DatumShift,
}

/// How heights of a terrain model came onto the datum of the threshold.
#[derive(Clone, Debug, PartialEq)]
pub enum DatumShift {
    /// They stand on it.
    None,
    /// They were moved by what the conversion gives at the site, and how that was done.
    By(Length, String),
    /// There is no conversion: its heights are left out. Why.
    Refused(String),
}

/// The terrain around a site.
pub(super) struct Terrain<'a> {
    sources: &'a Sources,
    location: Location,
    datum: VerticalDatum,
    rasters: Vec<RasterUsed>,
}

impl<'a> Terrain<'a> {
    pub(super) fn new(sources: &'a Sources, site: &Site) -> Self {
        let datum = site.threshold.datum();
        let zero = |from| Elevation::new(Length::new::<meter>(0.0), from);
        let dems = sources.terrain.dems().iter();
        let rasters = dems.map(|dem| RasterUsed {
            file: dem.name().to_owned(),
            datum: dem.datum(),
            unit: dem.unit(),
            cell: dem.cell_size(),
            dated: dem.dated().map(str::to_owned),
            // One shift for all of the square: grids of datums change by millimetres over a
            // kilometre, and the terrain is known to no better than centimetres.
            shift: if dem.datum() == datum {
                DatumShift::None
            } else {
                match (sources.datums).convert(zero(dem.datum()), datum, site.location) {
                    Ok(conversion) => DatumShift::By(conversion.shift, conversion.how),
                    Err(error) => DatumShift::Refused(error.to_string()),
                }
            },
        });
        Self {
            sources,
            location: site.location,
            datum,
            rasters: rasters.collect(),
        }
    }

    pub(super) fn used(self) -> Vec<RasterUsed> {
        self.rasters
    }

    /// The size of the finest cells; `None` without a terrain.
    pub(super) fn finest_cell(&self) -> Option<Length> {
        self.rasters.first().map(|raster| raster.cell)
    }

    /// The ground at points about the site.
    pub(super) fn heights(
        &self,
        offsets: &[Coord<f64>],
    ) -> Result<Vec<Option<Elevation>>, TerrainError> {
        let spots = (self.sources.terrain).spots_around(self.location, offsets)?;
        let on_datum = |spot: Spot| {
            let height = spot.elevation.height();
            match &self.rasters.get(spot.raster)?.shift {
                DatumShift::None => Some(spot.elevation),
                DatumShift::By(shift, _) => Some(Elevation::new(height + *shift, self.datum)),
                DatumShift::Refused(_) => None,
            }
        };
        Ok(spots.into_iter().map(|spot| on_datum(spot?)).collect())
    }

    /// The grid over a square of half the side `reach` (metres); `None` where no cell of it
    /// has a height.
    #[allow(clippy::cast_precision_loss)] // 160
    pub(super) fn grid(&self, reach: f64) -> Result<Option<GroundGrid>, TerrainError> {
        let cell = 2.0 * reach / SIDE as f64;
        let along = |number: usize| (number as f64 + 0.5) * cell - reach;
        let offsets: Vec<Coord<f64>> = (0..SIDE)
            .flat_map(|row| (0..SIDE).map(move |column| (column, row)))
            .map(|(column, row)| Coord {
                x: along(column),
                y: -along(row),
            })
            .collect();
        let heights = self.heights(&offsets)?.into_iter();
        let heights: Vec<Option<Length>> = heights
            .map(|elevation| elevation.map(Elevation::height))
            .collect();
        let grid = GroundGrid {
            side: SIDE,
            cell: Length::new::<meter>(cell),
            heights,
        };
        Ok(Some(grid).filter(|grid| grid.void_count() < grid.heights.len()))
    }
}
