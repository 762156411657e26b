//! The first phase: blocks of the input become rows.

use std::sync::Arc;

use super::RunError;
use super::chunk::Chunk;
use super::crew::Phase;
use super::job::{Done, Job};
use super::run::{BLOCK_BYTES, Watched};
use crate::hazard::SharedZones;
use crate::table::TableReader;

/// Blocks of the input on their way to rows.
pub(super) struct Parsing<'a, 'b, 'w> {
    /// The job of reading zones, until somebody has it.
    pub(super) zones: Option<Job>,
    pub(super) layers: Option<Vec<Arc<SharedZones>>>,
    pub(super) reader: &'a mut TableReader,
    pub(super) chunks: Vec<Option<Chunk>>,
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
        Ok(Some(Job::Parse { number, block }))
    }

    fn take(&mut self, done: Done) -> Result<(), RunError> {
        let (number, chunk) = match done {
            Done::Parsed { number, chunk } => (number, chunk),
            Done::Zones { layers } => {
                self.layers = Some(layers);
                return Ok(());
            }
            _ => return Err(RunError::ThreadEnded),
        };
        self.bytes += chunk.bytes();
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
