//! The order in which places are read: tile after tile of the terrain.

use crate::site::Location;
use crate::terrain::{Terrain, TileKey};

/// A row's turn: where it lies, and which row it is, by its chunk and its place in it.
pub(super) type Turn = (u64, u32, u32);

/// Where a place comes in the order: last where no raster reaches, or where it cannot be
/// located, which is told when it is read.
pub(super) fn key(location: Location, terrain: &Terrain) -> u64 {
    let tile = terrain.tile_at(location);
    tile.unwrap_or(TileKey::OUTSIDE).packed()
}

/// Sorts turns on so many threads; rows with one key may come in any order.
pub(super) fn sort(turns: &mut [Turn], threads: usize) {
    if threads < 2 || turns.len() < threads * SMALLEST {
        turns.sort_unstable_by_key(|turn| turn.0);
        return;
    }
    let before = threads / 2;
    let middle = turns.len() / threads * before;
    turns.select_nth_unstable_by_key(middle, |turn| turn.0);
    let (low, high) = turns.split_at_mut(middle);
    std::thread::scope(|scope| {
        scope.spawn(|| sort(low, before));
        sort(high, threads - before);
    });
}

/// Cuts sorted turns into one part for each worker, and each part into jobs that end where a
/// tile ends.
pub(super) fn jobs(turns: &[Turn], workers: usize) -> Vec<Vec<std::ops::Range<usize>>> {
    let target = (turns.len() / (workers.max(1) * JOBS_EACH)).max(SMALLEST);
    let mut all = Vec::new();
    let mut start = 0;
    while start < turns.len() {
        let mut end = (start + target).min(turns.len());
        let key = |position: usize| turns.get(position).map(|turn| TileKey::tile_of(turn.0));
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
const JOBS_EACH: usize = 256;

/// Fewer rows are not worth a message between threads.
const SMALLEST: usize = 256;

#[cfg(test)]
mod tests {
    use super::{SMALLEST, TileKey, Turn, jobs, sort};

    /// So many rows of each tile.
    fn turns(of_tiles: &[usize]) -> Vec<Turn> {
        let tiles = of_tiles.iter().zip(0_u64..);
        let keys = tiles.flat_map(|(rows, tile)| std::iter::repeat_n(tile, *rows));
        let keys = keys.map(|tile| tile << TileKey::WITHIN_BITS);
        keys.zip(0_u32..).map(|(key, row)| (key, 0, row)).collect()
    }

    #[test]
    fn threads_sort_as_one_does() {
        for rows in [0, 1, 5000, 70_001] {
            let scattered = (0..rows).map(|row: u32| (u64::from(row) * 7919 % 1009, 0, row));
            let mut expected: Vec<Turn> = scattered.collect();
            let scattered = expected.clone();
            expected.sort_unstable();
            for threads in [1, 2, 3, 8] {
                let mut turns = scattered.clone();
                sort(&mut turns, threads);
                assert!(turns.is_sorted_by_key(|turn| turn.0));
                turns.sort_unstable();
                assert_eq!(turns, expected);
            }
        }
    }

    #[test]
    fn every_turn_is_in_one_job() {
        for tiles in [vec![], vec![1], vec![100_000], vec![700; 90], vec![3; 4000]] {
            for workers in [1, 2, 7, 64] {
                let turns = turns(&tiles);
                let parts = jobs(&turns, workers);
                assert!(parts.len() <= workers);
                let mut next = 0;
                for range in parts.concat() {
                    assert_eq!(range.start, next);
                    assert!(range.end > range.start);
                    next = range.end;
                }
                assert_eq!(next, turns.len());
            }
        }
    }

    #[test]
    fn jobs_end_where_a_tile_ends_unless_it_holds_too_many() {
        let small = turns(&[SMALLEST + 1; 8]);
        for range in jobs(&small, 1).concat() {
            let end = small.get(range.end).map(|turn| turn.0);
            assert_ne!(end, Some(small[range.end - 1].0));
        }
        let one_tile = turns(&[100_000]);
        assert!(jobs(&one_tile, 4).concat().len() > 4);
    }
}
