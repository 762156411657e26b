//! What threads are given to do, and what becomes of it.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use super::chunk::{Chunk, Emptied, RowFault};
use super::order::Turn;
use super::same_ids::IdAt;
use super::stored::{Packed, Unusual};
use super::summary::Summary;
use super::zones::Zones;
use crate::hazard::{Part, SharedZones};
use crate::table::Block;

/// The rows of a batch.
pub(super) type Batch = Arc<Vec<Chunk>>;

/// Something to do.
pub(super) enum Job {
    /// To parse a block.
    Parse {
        number: usize,
        block: Block,
        /// Where its rows go.
        emptied: Emptied,
    },
    /// To read the zone layers.
    Zones { part: Option<Part> },
    /// To make maps of the zones that the next jobs ask, before those come.
    Prepare { zones: Zones },
    /// To read the maps at places that lie together.
    Survey {
        zones: Zones,
        batch: Batch,
        turns: Arc<Vec<Turn>>,
        range: Range<usize>,
    },
    /// To answer the rows of a chunk.
    Answer {
        zones: Zones,
        batch: Batch,
        number: usize,
        readings: Vec<Packed>,
        unusual: HashMap<u32, Unusual>,
    },
}

/// What became of it.
pub(super) enum Done {
    Parsed {
        number: usize,
        chunk: Chunk,
        /// Where each of its rows comes in the order of the terrain.
        keys: Vec<u64>,
    },
    Zones {
        layers: Vec<Arc<SharedZones>>,
    },
    Surveyed {
        range: Range<usize>,
        readings: Vec<Packed>,
        unusual: Vec<(usize, Unusual)>,
    },
    Answered {
        number: usize,
        answers: Box<Answers>,
        /// Given back.
        readings: Vec<Packed>,
    },
}

/// The answers to the rows of a stretch of the input, in its order.
#[derive(Debug, Default)]
pub struct Answers {
    /// Lines of the result.
    pub lines: Vec<u8>,
    /// Rows that give none.
    pub rejects: Vec<RowFault>,
    /// The ids of all rows.
    pub ids: Vec<IdAt>,
    /// What was counted; places in cells that may be as large as those of the rows before.
    pub summary: Summary,
}
