//! The third phase: rows are answered and written in the order of the input.

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use super::crew::Phase;
use super::job::{Answers, Batch, Done, Job};
use super::room::Room;
use super::run::Watched;
use super::stored::{Packed, Unusual};
use super::zones::Zones;
use super::{RunError, Sink};

/// The rows of a batch on their way to answers.
pub(super) struct Answering<'a, 'b, 'w> {
    pub(super) zones: Zones,
    pub(super) batch: Batch,
    pub(super) readings: Vec<Vec<Packed>>,
    pub(super) unusual: Vec<HashMap<u32, Unusual>>,
    pub(super) issued: usize,
    pub(super) written: usize,
    /// Answers whose turn has not come.
    pub(super) waiting: BTreeMap<usize, Box<Answers>>,
    pub(super) room: &'a mut Room,
    pub(super) sink: &'a mut dyn Sink,
    pub(super) watched: &'a mut Watched<'b, 'w>,
}

impl Phase for Answering<'_, '_, '_> {
    fn next(&mut self, _worker: usize) -> Result<Option<Job>, RunError> {
        let number = self.issued;
        let (Some(readings), Some(unusual)) =
            (self.readings.get_mut(number), self.unusual.get_mut(number))
        else {
            return Ok(None);
        };
        self.issued += 1;
        Ok(Some(Job::Answer {
            zones: self.zones.clone(),
            batch: Arc::clone(&self.batch),
            number,
            readings: std::mem::take(readings),
            unusual: std::mem::take(unusual),
        }))
    }

    fn take(&mut self, done: Done) -> Result<(), RunError> {
        let Done::Answered {
            number,
            answers,
            readings,
        } = done
        else {
            return Err(RunError::ThreadEnded);
        };
        self.room.put_readings(readings);
        self.waiting.insert(number, answers);
        while let Some(answers) = self.waiting.remove(&self.written) {
            let Some(chunk) = self.batch.get(self.written) else {
                return Err(RunError::ThreadEnded);
            };
            self.written += 1;
            self.sink.take(&answers, chunk.end)?;
            let rows = chunk.rows.len() as u64;
            self.watched.tell(|progress| progress.answered += rows)?;
        }
        Ok(())
    }
}
