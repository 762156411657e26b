//! A small memory of decoded tiles, so that neighbouring points read the file once.

use std::collections::HashMap;
use std::rc::Rc;

use super::TerrainError;
use super::cells::Cells;
use super::grid::Grid;
use super::window::Window;

/// Cells along the side of a tile.
const SIDE: usize = 256;

/// Tiles that are kept: 64 of 512 KiB each.
const KEPT: usize = 64;

/// Heights of a tile, metres, NaN where there is none.
struct Tile {
    columns: usize,
    heights: Vec<f64>,
}

/// The tiles last used.
#[derive(Default)]
pub(super) struct Tiles {
    clock: u64,
    tiles: HashMap<(usize, usize), (u64, Rc<Tile>)>,
}

impl Tiles {
    /// The height of a cell in metres, NaN where it has none.
    pub(super) fn height(
        &mut self,
        cells: &Cells,
        grid: &Grid,
        column: usize,
        row: usize,
    ) -> Result<f64, TerrainError> {
        let tile = self.tile(cells, grid, (column / SIDE, row / SIDE))?;
        let index = (row % SIDE) * tile.columns + column % SIDE;
        Ok(tile.heights.get(index).copied().unwrap_or(f64::NAN))
    }

    fn tile(
        &mut self,
        cells: &Cells,
        grid: &Grid,
        key: (usize, usize),
    ) -> Result<Rc<Tile>, TerrainError> {
        self.clock += 1;
        if let Some((used, tile)) = self.tiles.get_mut(&key) {
            *used = self.clock;
            return Ok(Rc::clone(tile));
        }
        let (column, row) = (key.0 * SIDE, key.1 * SIDE);
        let window = Window {
            column,
            row,
            columns: SIDE.min(grid.columns.saturating_sub(column)),
            rows: SIDE.min(grid.rows.saturating_sub(row)),
        };
        let tile = Rc::new(Tile {
            columns: window.columns,
            heights: cells.heights(window)?,
        });
        if self.tiles.len() >= KEPT
            && let Some(oldest) = self
                .tiles
                .iter()
                .min_by_key(|(_, (used, _))| *used)
                .map(|(key, _)| *key)
        {
            self.tiles.remove(&oldest);
        }
        self.tiles.insert(key, (self.clock, Rc::clone(&tile)));
        Ok(tile)
    }
}
