//! The second phase: maps are read, tile after tile of the terrain.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use super::RunError;
use super::chunk::Chunk;
use super::crew::Phase;
use super::job::{Batch, Done, Job};
use super::order::{RowNumber, Turn};
use super::run::Watched;
use super::stored::{Packed, Unusual};
use super::zones::Zones;

/// The rows in the order of the terrain's tiles.
pub(super) fn turns(chunks: &mut [Chunk]) -> Vec<Turn> {
    let count = chunks.iter().map(|chunk| chunk.rows.len()).sum();
    let mut turns: Vec<Turn> = Vec::with_capacity(count);
    for (number, chunk) in chunks.iter_mut().enumerate() {
        let keys = std::mem::take(&mut chunk.keys);
        let of_chunk = keys.into_iter().enumerate();
        turns.extend(of_chunk.map(|(row, key)| (key, as_u32(number), as_u32(row))));
    }
    // Rows with one key may come in any order.
    turns.sort_unstable_by_key(|turn| turn.0);
    turns
}

fn as_u32(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

/// The places of a batch on their way to readings.
pub(super) struct Survey<'a, 'b, 'w> {
    pub(super) zones: Zones,
    pub(super) batch: Batch,
    pub(super) turns: Arc<Vec<RowNumber>>,
    /// For each worker the jobs that are left.
    pub(super) parts: Vec<Vec<Range<usize>>>,
    pub(super) readings: Vec<Vec<Packed>>,
    pub(super) unusual: Vec<HashMap<u32, Unusual>>,
    pub(super) watched: &'a mut Watched<'b, 'w>,
}

impl Survey<'_, '_, '_> {
    /// The next job of the worker's own part, whose tiles follow each other; else the last of
    /// the part that has most left.
    fn range(&mut self, worker: usize) -> Option<Range<usize>> {
        if let Some(own) = self.parts.get_mut(worker)
            && !own.is_empty()
        {
            return Some(own.remove(0));
        }
        let longest = self.parts.iter_mut().max_by_key(|part| part.len())?;
        longest.pop()
    }
}

impl Phase for Survey<'_, '_, '_> {
    fn next(&mut self, worker: usize) -> Result<Option<Job>, RunError> {
        Ok(self.range(worker).map(|range| Job::Survey {
            zones: self.zones.clone(),
            batch: Arc::clone(&self.batch),
            turns: Arc::clone(&self.turns),
            range,
        }))
    }

    fn take(&mut self, done: Done) -> Result<(), RunError> {
        let Done::Surveyed {
            range,
            readings,
            unusual,
        } = done
        else {
            return Err(RunError::ThreadEnded);
        };
        let turns = self.turns.get(range).unwrap_or_default();
        let rows = turns.len() as u64;
        for ((chunk, row), read) in turns.iter().zip(readings) {
            let of_chunk = self.readings.get_mut(*chunk as usize);
            if let Some(place) = of_chunk.and_then(|rows| rows.get_mut(*row as usize)) {
                *place = read;
            }
        }
        for (position, rest) in unusual {
            let Some((chunk, row)) = turns.get(position) else {
                continue;
            };
            if let Some(of_chunk) = self.unusual.get_mut(*chunk as usize) {
                of_chunk.insert(*row, rest);
            }
        }
        self.watched.tell(|progress| progress.surveyed += rows)
    }
}
