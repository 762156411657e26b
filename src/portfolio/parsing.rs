//! The first phase: blocks of the input become rows.

use std::sync::Arc;

use super::RunError;
use super::chunk::Chunk;
use super::crew::Phase;
use super::job::{Done, Job};
use super::order::Turn;
use super::room::Room;
use super::run::{BLOCK_BYTES, Watched};
use crate::hazard::SharedZones;
use crate::table::TableReader;

/// Blocks of the input on their way to rows.
pub(super) struct Parsing<'a, 'b, 'w> {
    /// The job of reading zones, until somebody has it.
    pub(super) zones: Option<Job>,
    pub(super) layers: Option<Vec<Arc<SharedZones>>>,
    pub(super) reader: &'a mut TableReader,
    pub(super) room: &'a mut Room,
    pub(super) chunks: Vec<Option<Chunk>>,
    /// The rows in the order in which they were parsed.
    pub(super) turns: Vec<Turn>,
    pub(super) issued: usize,
    pub(super) bytes: usize,
    pub(super) budget: usize,
    pub(super) ended: bool,
    pub(super) watched: &'a mut Watched<'b, 'w>,
}

impl Phase for Parsing<'_, '_, '_> {
    fn next(&mut self, _worker: usize) -> Result<Option<Job>, RunError> {
        if let Some(job) = self.zones.take() {
            return Ok(Some(job));
        }
        if self.ended || self.bytes >= self.budget {
            return Ok(None);
        }
        let Some(block) = self.reader.next_block(BLOCK_BYTES)? else {
            self.ended = true;
            return Ok(None);
        };
        let number = self.issued;
        self.issued += 1;
        self.chunks.push(None);
        let emptied = self.room.chunk();
        Ok(Some(Job::Parse {
            number,
            block,
            emptied,
        }))
    }

    fn take(&mut self, done: Done) -> Result<(), RunError> {
        let (number, chunk, keys) = match done {
            Done::Parsed {
                number,
                chunk,
                keys,
            } => (number, chunk, keys),
            Done::Zones { layers } => {
                self.layers = Some(layers);
                return Ok(());
            }
            _ => return Err(RunError::ThreadEnded),
        };
        self.bytes += chunk.bytes();
        let of_chunk = u32::try_from(number).unwrap_or(u32::MAX);
        let turns = (0..).zip(keys);
        self.turns
            .extend(turns.map(|(row, key)| (key, of_chunk, row)));
        let (rows, bytes) = (chunk.rows.len() as u64, chunk.input_bytes);
        if let Some(place) = self.chunks.get_mut(number) {
            *place = Some(chunk);
        }
        self.watched.tell(|progress| {
            progress.parsed += rows;
            progress.bytes += bytes;
        })
    }
}
