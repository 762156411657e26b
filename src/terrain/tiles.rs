//! A memory of decoded tiles, bounded in bytes, that the rasters of a terrain share.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use super::TerrainError;
use super::cells::Cells;
use super::tile::Tile;
use super::tiling::{TileIndex, Tiling};

/// Bytes of tiles that are kept where nobody says otherwise.
pub(super) const KEPT_BYTES: usize = 32 << 20;

/// Places for the tiles used last: one for each corner of a tile, for two rasters.
const RECENT: usize = 8;

/// The tiles last used, of several rasters.
pub(super) struct Tiles {
    limit: usize,
    /// Where places come in the order of their tiles: how often they began anew at a lower
    /// row, which they do with each stripe, and the farthest row since.
    sweep: Option<(u64, u32)>,
    held: usize,
    clock: u64,
    decoded: u64,
    kept: Vec<Kept>,
    found: HashMap<Key, usize>,
    /// Where in `kept` the tiles used last may stand. Tiles that touch each other have
    /// different places here, so that a place on a border keeps both.
    recent: [usize; RECENT],
}

#[derive(Clone, Copy, PartialEq, Eq, Hash)]
struct Key {
    raster: u32,
    tile: TileIndex,
}

struct Kept {
    key: Key,
    used: u64,
    /// In which sweep it was used last.
    sweep: u64,
    bytes: usize,
    tile: Rc<Tile>,
}

impl Tiles {
    pub(super) fn keeping(limit: usize) -> Self {
        Self {
            limit,
            sweep: None,
            held: 0,
            clock: 0,
            decoded: 0,
            kept: Vec::new(),
            found: HashMap::new(),
            recent: [0; RECENT],
        }
    }

    /// Changes how many bytes are kept.
    pub(super) fn keep(&mut self, limit: usize) {
        self.limit = limit;
        self.make_room(0);
    }

    /// From now on places come in the order of their tiles.
    pub(super) const fn expect_order(&mut self) {
        self.sweep = Some((0, 0));
    }

    /// Bytes that are kept.
    pub(super) const fn limit(&self) -> usize {
        self.limit
    }

    /// How many tiles were decoded so far.
    pub(super) const fn decoded(&self) -> u64 {
        self.decoded
    }

    fn get(&mut self, cells: &Cells, tiling: &Tiling, key: Key) -> Result<Rc<Tile>, TerrainError> {
        self.clock += 1;
        let (column, row) = (key.tile.column, key.tile.row);
        if let Some((sweep, farthest)) = &mut self.sweep {
            if row + 2 < *farthest {
                *sweep += 1;
                *farthest = row;
            }
            *farthest = row.max(*farthest);
        }
        let sweep = self.sweep.map_or(0, |(sweep, _)| sweep);
        let recent = ((key.raster & 1) << 2 | (row & 1) << 1 | (column & 1)) as usize;
        let place = self.recent[recent];
        if let Some(kept) = self.kept.get_mut(place)
            && kept.key == key
        {
            kept.used = self.clock;
            kept.sweep = sweep;
            return Ok(Rc::clone(&kept.tile));
        }
        let place = match self.found.get(&key) {
            Some(place) => *place,
            None => self.decode(cells, tiling, key)?,
        };
        self.recent[recent] = place;
        let kept = &mut self.kept[place];
        kept.used = self.clock;
        kept.sweep = sweep;
        Ok(Rc::clone(&kept.tile))
    }

    /// Reads a tile, and gives its place among those kept.
    #[cold]
    fn decode(&mut self, cells: &Cells, tiling: &Tiling, key: Key) -> Result<usize, TerrainError> {
        let window = tiling.window(key.tile);
        let bytes = window.columns * window.rows * cells.bytes_per_cell();
        self.make_room(bytes);
        let tile = Rc::new(Tile::new(window, cells.read(window)?));
        self.decoded += 1;
        self.held += bytes;
        let place = self.kept.len();
        self.found.insert(key, place);
        self.kept.push(Kept {
            key,
            used: self.clock,
            sweep: self.sweep.map_or(0, |(sweep, _)| sweep),
            bytes,
            tile,
        });
        Ok(place)
    }

    /// Gives up tiles until so many bytes fit: those not used for longest; or, where places
    /// come in order, those that come first in it, which are behind. (Those not used for
    /// longest would be the ones ahead, read for their border with the row before.) A tile
    /// larger than the limit is kept alone.
    fn make_room(&mut self, bytes: usize) {
        while self.held + bytes > self.limit
            && let Some(oldest) = (0..self.kept.len()).min_by_key(|place| self.rest_of_use(*place))
        {
            let gone = self.kept.swap_remove(oldest);
            self.held -= gone.bytes;
            self.found.remove(&gone.key);
            if let Some(moved) = self.kept.get(oldest) {
                self.found.insert(moved.key, oldest);
            }
        }
    }

    /// What is least for the tile that is needed least.
    fn rest_of_use(&self, place: usize) -> (u64, u64) {
        let Kept {
            key, used, sweep, ..
        } = &self.kept[place];
        match self.sweep {
            Some(_) => (
                *sweep,
                u64::from(key.tile.row) << 32 | u64::from(key.tile.column),
            ),
            None => (0, *used),
        }
    }
}

/// One raster's door to the tiles it shares with others.
#[derive(Clone)]
pub(super) struct TileShelf {
    tiles: Rc<RefCell<Tiles>>,
    raster: u32,
    tiling: Tiling,
}

impl TileShelf {
    /// A shelf of its own.
    pub(super) fn new(tiling: Tiling) -> Self {
        Self {
            tiles: Rc::new(RefCell::new(Tiles::keeping(KEPT_BYTES))),
            raster: 0,
            tiling,
        }
    }

    /// Puts the tiles of the raster with this number among those of others.
    pub(super) fn join(&mut self, tiles: &Rc<RefCell<Tiles>>, raster: u32) {
        self.tiles = Rc::clone(tiles);
        self.raster = raster;
    }

    pub(super) const fn tiling(&self) -> &Tiling {
        &self.tiling
    }

    pub(super) fn tile(&self, cells: &Cells, tile: TileIndex) -> Result<Rc<Tile>, TerrainError> {
        let key = Key {
            raster: self.raster,
            tile,
        };
        self.tiles.borrow_mut().get(cells, &self.tiling, key)
    }
}
