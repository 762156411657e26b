//! The second phase: maps are read, tile after tile of the terrain.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use super::RunError;
use super::crew::Phase;
use super::job::{Batch, Done, Job};
use super::order::Turn;
use super::run::Watched;
use super::stored::{Packed, Unusual};
use super::zones::Zones;

/// The places of a batch on their way to readings.
pub(super) struct Survey<'a, 'b, 'w> {
    pub(super) zones: Zones,
    pub(super) batch: Batch,
    pub(super) turns: Arc<Vec<Turn>>,
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
        for ((_, chunk, row), read) in turns.iter().zip(readings) {
            let of_chunk = self.readings.get_mut(*chunk as usize);
            if let Some(place) = of_chunk.and_then(|rows| rows.get_mut(*row as usize)) {
                *place = read;
            }
        }
        for (position, rest) in unusual {
            let Some((_, chunk, row)) = turns.get(position) else {
                continue;
            };
            if let Some(of_chunk) = self.unusual.get_mut(*chunk as usize) {
                of_chunk.insert(*row, rest);
            }
        }
        self.watched.tell(|progress| progress.surveyed += rows)
    }
}
