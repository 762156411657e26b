//! The memory of a batch, which the next one takes over.
//!
//! Buffers that are given back and asked for anew with every batch leave holes between what
//! stays, and later batches would stand tens of megabytes above the first. So they are emptied
//! and filled again.

use super::chunk::{Chunk, Emptied};
use super::order::Turn;
use super::stored::Packed;

/// Empty buffers of a batch that is answered.
#[derive(Default)]
pub(super) struct Room {
    chunks: Vec<Emptied>,
    readings: Vec<Vec<Packed>>,
    turns: Vec<Turn>,
}

impl Room {
    /// Of one chunk.
    pub(super) fn chunk(&mut self) -> Emptied {
        self.chunks.pop().unwrap_or_default()
    }

    /// Takes back the rows of a batch; those that a thread still holds are lost.
    pub(super) fn put_chunks(&mut self, chunks: Option<Vec<Chunk>>) {
        let chunks = chunks.into_iter().flatten();
        self.chunks.extend(chunks.map(Chunk::emptied));
    }

    /// Readings of so many rows, nothing read yet.
    pub(super) fn readings(&mut self, rows: usize) -> Vec<Packed> {
        let mut readings = self.readings.pop().unwrap_or_default();
        make_room(&mut readings, rows);
        readings.resize(rows, Packed::NOTHING);
        readings
    }

    pub(super) fn put_readings(&mut self, mut readings: Vec<Packed>) {
        readings.clear();
        self.readings.push(readings);
    }

    /// No turns yet.
    pub(super) fn turns(&mut self) -> Vec<Turn> {
        std::mem::take(&mut self.turns)
    }

    /// Takes back the turns of a batch; what a thread still holds is lost.
    pub(super) fn put_turns(&mut self, turns: Option<Vec<Turn>>) {
        self.turns = turns.unwrap_or_default();
        self.turns.clear();
    }
}

/// Makes an empty buffer large enough for so many, and for the few more that the next stretch
/// of the input may have.
pub(super) fn make_room<T>(buffer: &mut Vec<T>, count: usize) {
    if buffer.capacity() < count {
        buffer.reserve_exact(count.next_multiple_of(STEP));
    }
}

/// Rows by which buffers grow.
const STEP: usize = 256;
