//! The order in which places are read: tile after tile of the terrain.

use crate::site::Location;
use crate::terrain::{Terrain, TileKey};

/// A row's turn: where it lies, and which row it is.
pub(super) type Turn = (u64, u32, u32);

/// Where a place comes in the order. One that cannot be located comes last, and fails when it
/// is read.
pub(super) fn key(location: Location, terrain: &Terrain) -> u64 {
    let tile = terrain.tile_at(location);
    tile.unwrap_or(TileKey::OUTSIDE).packed()
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
