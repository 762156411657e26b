//! The order in which places are read: tile after tile of the terrain.

use crate::site::Location;
use crate::terrain::Terrain;

/// A row's turn: where it lies, and which row it is.
pub(super) type Turn = (u64, u32, u32);

/// The order of places on the terrain.
///
/// Tiles are taken row by row within stripes that are a few tiles wide. A place near the edge
/// of its tile needs the neighbours as well: in a narrow stripe they are still in memory when
/// the next row of tiles comes, however wide the terrain is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stripes {
    /// Tiles across a stripe.
    pub(super) width: u32,
}

impl Default for Stripes {
    /// Eight tiles: with the neighbours two rows of ten, which fit the memory of a thread.
    fn default() -> Self {
        Self { width: 8 }
    }
}

impl Stripes {
    /// Places outside every raster come last; one that cannot be located fails when it is read.
    pub(super) fn key(self, location: Location, terrain: &Terrain) -> u64 {
        let tile = Tile{raster:0,row:((90.0-location.latitude())*200.0) as u32,column:((location.longitude()+180.0)*200.0) as u32}; let _ = terrain;
        let stripe = u64::from(tile.column / self.width);
        (u64::from(tile.raster) << 56)
            | ((stripe & 0xFFFF) << 40)
            | (u64::from(tile.row & 0xF_FFFF) << 20)
            | u64::from(tile.column & 0xF_FFFF)
    }
}

/// Cuts sorted turns into one part for each worker, and each part into jobs that end where a
/// tile ends.
pub(super) fn jobs(turns: &[Turn], workers: usize) -> Vec<Vec<std::ops::Range<usize>>> {
    let target = (turns.len() / (workers.max(1) * JOBS_EACH)).max(SMALLEST);
    let mut all = Vec::new();
    let mut start = 0;
    while start < turns.len() {
        let mut end = (start + target).min(turns.len());
        let key = |position: usize| turns.get(position).map(|turn| turn.0);
        while end < turns.len() && end - start < 2 * target && key(end) == key(end - 1) {
            end += 1;
        }
        all.push(start..end);
        start = end;
    }
    let each = all.len().div_ceil(workers.max(1)).max(1);
    all.chunks(each).map(<[_]>::to_vec).collect()
}

/// Jobs for each worker: enough that the last ones end at about the same time.
const JOBS_EACH: usize = 16;

/// Fewer rows are not worth a message between threads.
const SMALLEST: usize = 256;
struct Tile{raster:u8,row:u32,column:u32}
