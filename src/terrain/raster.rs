//! One raster of heights or depths, whatever they are counted from.

use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::sync::Arc;

use gdal::Dataset;
use geo::Coord;

use super::cells::Cells;
use super::grid::{Between, Grid, as_float, as_index, between};
use super::near::Near;
use super::order::PlaceInTile;
use super::reader::Reader;
use super::rim::Rim;
use super::tile::Tile;
use super::tiles::{TileShelf, Tiles};
use super::tiling::{TileIndex, Tiling};
use super::{CellReading, DemStatement, Gap, RasterRole, TerrainError, statement};
use crate::crs::{CrsDefinition, CrsError, HorizontalCrs, LocalFrame, Projector, VerticalCrs};
use crate::gis::{self, Fetched};
use crate::quantity::{Length, LengthUnit, unit::meter};
use crate::site::Location;

/// A raster of lengths with its unit and coordinate reference system settled: what an
/// elevation raster and a raster of depths share.
///
/// Not `Send`: a thread opens its own.
pub struct Raster {
    path: PathBuf,
    name: Arc<str>,
    pub(super) grid: Grid,
    unit: LengthUnit,
    dated: Option<String>,
    fetched: Option<Fetched>,
    cell_size: Length,
    projector: Projector,
    cells: Cells,
    tiles: TileShelf,
    pub(super) rim: RefCell<Rim>,
    near: RefCell<Near>,
}

/// Cells around a place that are mostly all that is read there.
const AROUND: usize = 8;

/// Metres of a degree of latitude, for comparing cell sizes only.
const METRES_PER_DEGREE: f64 = 111_320.0;

impl Raster {
    /// Opens a raster of one band, and hands on the vertical system that it is in.
    ///
    /// # Errors
    /// [`TerrainError`] with the path and, where something is missing, the option that
    /// states it.
    pub(super) fn open(
        path: &Path,
        statement: &DemStatement,
        role: RasterRole,
    ) -> Result<(Self, Option<VerticalCrs>), TerrainError> {
        let dataset = gis::open_raster(path)?;
        let bands = dataset.raster_count();
        if bands != 1 {
            return Err(TerrainError::Bands {
                path: path.to_owned(),
                bands,
                what: role.content(),
            });
        }
        let grid = grid(path, &dataset)?;
        let file = dataset.spatial_ref().ok();
        let file = file.map(|file| CrsDefinition::from_spatial_ref(&file));
        let crs = statement::crs(path, file, statement, role)?;
        let band_unit = dataset.rasterband(1).map(|band| band.unit());
        let unit = statement::unit(
            path,
            &band_unit.unwrap_or_default(),
            crs.vertical.as_ref(),
            statement,
            role,
        )?;
        let projector = Projector::new(crs.horizontal).map_err(|source| TerrainError::Crs {
            path: path.to_owned(),
            source,
            option: role.crs_option(),
        })?;
        let name = path.file_name().map_or_else(
            || path.display().to_string(),
            |name| name.to_string_lossy().into_owned(),
        );
        let dated = gis::stated_date(&dataset);
        let fetched = Fetched::of(&dataset);
        let cell_size =
            gis::served_cell_size(&dataset).unwrap_or_else(|| cell_size(&grid, projector.target()));
        let cells = Cells::new(path.to_owned(), dataset, unit)?;
        let raster = Self {
            path: path.to_owned(),
            name: name.into(),
            grid,
            unit,
            dated,
            fetched,
            cell_size,
            projector,
            tiles: TileShelf::new(cells.tiling()),
            cells,
            rim: RefCell::default(),
            near: RefCell::default(),
        };
        Ok((raster, crs.vertical))
    }

    /// The file.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The file's name without its folders.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The file's name as [`Ground`](super::Ground) and [`Grade`](super::Grade) carry it: all
    /// of them share this one text.
    #[must_use]
    pub const fn source(&self) -> &Arc<str> {
        &self.name
    }

    /// The unit that the file stores its values in.
    #[must_use]
    pub const fn unit(&self) -> LengthUnit {
        self.unit
    }

    /// What the file says of its own date, in words; `None` where it says nothing.
    #[must_use]
    pub fn dated(&self) -> Option<&str> {
        self.dated.as_deref()
    }

    /// The service that it was fetched from; `None` where it was none.
    #[must_use]
    pub const fn fetched(&self) -> Option<&Fetched> {
        self.fetched.as_ref()
    }

    /// Its coordinate reference system.
    #[must_use]
    pub const fn crs(&self) -> &HorizontalCrs {
        self.projector.target()
    }

    /// The side of a square as large as one cell, at the middle of the raster, or of the served
    /// one that it is a crop of.
    #[must_use]
    pub const fn cell_size(&self) -> Length {
        self.cell_size
    }

    /// `None` where the raster holds a place (with or without ground there), else what it
    /// covers instead.
    pub(super) fn reach(&self, location: Location) -> Result<Option<TerrainError>, TerrainError> {
        let point = self.point(location)?;
        if point.is_some_and(|point| self.grid.position(point).is_some()) {
            return Ok(None);
        }
        let bounds = self.grid.bounds();
        Ok(Some(TerrainError::DoesNotReach {
            path: self.path.clone(),
            longitude: location.longitude(),
            latitude: location.latitude(),
            place: point.map(|point| [point.x, point.y]),
            lowest: [bounds.min().x, bounds.min().y],
            highest: [bounds.max().x, bounds.max().y],
            crs: self.crs().name().to_owned(),
        }))
    }

    pub(super) fn frame(&self, location: Location) -> Result<Option<LocalFrame>, TerrainError> {
        match LocalFrame::new(&self.projector, location) {
            Ok(frame) => Ok(Some(frame)),
            Err(CrsError::OutsideDomain { .. }) => Ok(None),
            Err(source) => Err(self.misplaced(source)),
        }
    }

    /// A reader of the cells around one place.
    pub(super) const fn reader(&self) -> Reader<'_> {
        Reader::new(self, self.cells.scale())
    }

    /// A height in metres for a stored value.
    pub(super) fn metres(&self, stored: f64) -> f64 {
        self.cells.scale().metres(stored)
    }

    pub(super) const fn tiling(&self) -> &Tiling {
        self.tiles.tiling()
    }

    /// Bytes of a whole tile.
    pub(super) fn tile_bytes(&self) -> usize {
        self.tiling().cells() * self.cells.bytes_per_cell()
    }

    pub(super) fn tile(&self, tile: TileIndex) -> Result<Rc<Tile>, TerrainError> {
        self.tiles.tile(&self.cells, tile)
    }

    /// Keeps its tiles among those of other rasters from now on.
    pub(super) fn share_tiles(&mut self, tiles: &Rc<RefCell<Tiles>>, number: u32) {
        self.tiles.join(tiles, number);
    }

    /// Height in metres at a point of the raster's plane.
    pub(super) fn metres_at(&self, point: Coord<f64>) -> Result<Result<f64, Gap>, TerrainError> {
        self.reader().metres_at(point)
    }

    /// Height in metres of the cell that holds a point of the raster's plane.
    pub(super) fn cell_metres_at(&self, point: Coord<f64>) -> Result<Option<f64>, TerrainError> {
        let Some((column, row)) = self.cells_around(point) else {
            return Ok(None);
        };
        let metres = self.reader().cell(column.nearest(), row.nearest())?;
        Ok(Some(metres).filter(|metres| !metres.is_nan()))
    }

    /// The tile that holds what lies [`AROUND`] cells below and right of a place, and about
    /// where in it; `None` where the place is outside the raster.
    pub(super) fn place_near(
        &self,
        location: Location,
    ) -> Result<Option<PlaceInTile>, TerrainError> {
        let near = self
            .near
            .borrow_mut()
            .point(location, |place| self.point(place))?;
        let Some(position) = near.and_then(|point| self.grid.position(point)) else {
            return Ok(None);
        };
        let column = (as_index(position.x) + AROUND).min(self.grid.columns - 1);
        let row = (as_index(position.y) + AROUND).min(self.grid.rows - 1);
        let tile = self.tiling().holding(column, row);
        let window = self.tiling().window(tile);
        Ok(Some(PlaceInTile {
            tile,
            right: as_float(column - window.column) / as_float(window.columns),
            down: as_float(row - window.row) / as_float(window.rows),
        }))
    }

    /// A place in the raster's plane; `None` where its coordinates cannot express it.
    pub(super) fn point(&self, location: Location) -> Result<Option<Coord<f64>>, TerrainError> {
        match self.projector.project(location) {
            Ok(point) => Ok(Some(point)),
            Err(CrsError::OutsideDomain { .. }) => Ok(None),
            Err(source) => Err(self.misplaced(source)),
        }
    }

    /// The cells that a place lies between, column and row; `None` outside the raster.
    pub(super) fn cells_at(
        &self,
        location: Location,
    ) -> Result<Option<(Between, Between)>, TerrainError> {
        Ok(self
            .point(location)?
            .and_then(|point| self.cells_around(point)))
    }

    /// What the raster says at a place, where a cell without a value says something too.
    ///
    /// Between four cells with values the reading is bilinear. Where one that has a share is
    /// void, the cell that holds the place answers alone: between a value and none there is
    /// nothing to interpolate.
    ///
    /// # Errors
    /// [`TerrainError`] where the file cannot be read or the transformation is not known.
    pub fn read_at(&self, location: Location) -> Result<CellReading, TerrainError> {
        let Some((column, row)) = self.cells_at(location)? else {
            return Ok(CellReading::Outside);
        };
        let mut reader = self.reader();
        if let Some(metres) = reader.bilinear(column, row)? {
            return Ok(CellReading::Between(Length::new::<meter>(metres)));
        }
        let metres = reader.cell(column.nearest(), row.nearest())?;
        if !metres.is_nan() {
            return Ok(CellReading::AtEdge(Length::new::<meter>(metres)));
        }
        for row in [row.first, row.second] {
            for column in [column.first, column.second] {
                if !reader.cell(column, row)?.is_nan() {
                    return Ok(CellReading::Void { beside_value: true });
                }
            }
        }
        Ok(CellReading::Void {
            beside_value: false,
        })
    }

    fn misplaced(&self, source: CrsError) -> TerrainError {
        TerrainError::Place {
            path: self.path.clone(),
            source,
        }
    }

    pub(super) fn cells_around(&self, point: Coord<f64>) -> Option<(Between, Between)> {
        let position = self.grid.position(point)?;
        Some((
            between(position.x, self.grid.columns),
            between(position.y, self.grid.rows),
        ))
    }

    /// Cells whose centres may lie within `metres` of a frame's place: first and last column
    /// and row, clipped to the raster. `None` where they all lie outside it.
    pub(super) fn cells_within(
        &self,
        frame: &LocalFrame,
        metres: f64,
    ) -> Option<[std::ops::Range<usize>; 2]> {
        let area = frame.box_around(Length::new::<meter>(metres));
        let (low, high) = (area.min(), area.max());
        let corners = [
            low,
            high,
            Coord {
                x: low.x,
                y: high.y,
            },
            Coord {
                x: high.x,
                y: low.y,
            },
        ]
        .map(|corner| self.grid.unbounded_position(corner));
        let range = |read: fn(&Coord<f64>) -> f64, count: usize| {
            let lowest = corners.iter().map(read).fold(f64::INFINITY, f64::min);
            let highest = corners.iter().map(read).fold(f64::NEG_INFINITY, f64::max);
            let first = lowest.floor().clamp(0.0, as_float(count));
            let last = highest.ceil().clamp(0.0, as_float(count));
            (first < last).then(|| as_index(first)..as_index(last))
        };
        let columns = range(|corner| corner.x, self.grid.columns)?;
        let rows = range(|corner| corner.y, self.grid.rows)?;
        Some([columns, rows])
    }
}

fn grid(path: &Path, dataset: &Dataset) -> Result<Grid, TerrainError> {
    let no_position = || TerrainError::NoPosition {
        path: path.to_owned(),
    };
    let (transform, _) = gis::heard(|| dataset.geo_transform());
    let transform = transform.map_err(|_| no_position())?;
    let (columns, rows) = dataset.raster_size();
    Grid::new(columns, rows, transform).ok_or_else(no_position)
}

/// The side of a square as large as one cell, at the middle of a raster.
fn cell_size(grid: &Grid, crs: &HorizontalCrs) -> Length {
    let side = grid.cell_side();
    let metres = if crs.is_geographic() {
        let latitude = grid.middle().y.to_radians();
        side * METRES_PER_DEGREE * latitude.cos().abs().sqrt()
    } else {
        side * crs.metres_per_unit().unwrap_or(1.0)
    };
    Length::new::<meter>(metres)
}
