//! The run: batch after batch through three phases.
//!
//! 1. *Parse.* Blocks of the input become rows, on all threads, until the memory for a batch
//!    is used.
//! 2. *Survey.* The places of the batch are put in the order of the terrain's tiles and read:
//!    zones, ground, levels. Each tile is decoded about once.
//! 3. *Answer.* Chunk after chunk, in the order of the input, each row is assessed from its
//!    readings and written.

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use super::answering::Answering;
use super::chunk::Chunk;
use super::crew::{Crew, Maps};
use super::job::{Answers, Batch, Job};
use super::order::{self, Turn, jobs};
use super::parsing::Parsing;
use super::room::Room;
use super::surveying::Survey;
use super::zones::{self, Zones};
use super::{Plan, RunError};
use crate::table::{Position, TableReader};

/// Takes the answers of a run, in the order of the input.
pub trait Sink {
    /// Takes answers; the input goes on at `end`.
    ///
    /// # Errors
    /// [`RunError`] where they cannot be written, or where enough is enough.
    fn take(&mut self, answers: &Answers, end: Position) -> Result<(), RunError>;

    /// Hears that these were all answers, while the threads come to their end.
    ///
    /// # Errors
    /// As [`take`](Self::take).
    fn end(&mut self) -> Result<(), RunError> {
        Ok(())
    }
}

/// How far a run is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Bytes of the input that are parsed.
    pub bytes: u64,
    /// Rows parsed.
    pub parsed: u64,
    /// Rows whose maps are read.
    pub surveyed: u64,
    /// Rows answered.
    pub answered: u64,
}

/// Looks on while a run goes; `false` stops it.
pub type Watch<'a> = dyn FnMut(Progress) -> bool + 'a;

/// Bytes of input that a thread parses at once: some four thousand rows.
pub const BLOCK_BYTES: usize = 1 << 18;

/// Runs a table through.
///
/// # Errors
/// [`RunError`]; what `sink` has taken by then is whole rows from the start.
pub fn run(
    reader: &mut TableReader,
    plan: &Plan,
    maps: &Maps<'_>,
    sink: &mut dyn Sink,
    watch: &mut Watch<'_>,
) -> Result<(), RunError> {
    Crew::run(plan, maps, |crew| {
        let mut watched = Watched {
            progress: Progress::default(),
            watch,
        };
        let mut zones = None;
        let mut room = Room::default();
        for number in 0.. {
            let turns = room.turns();
            let mut parsing = Parsing {
                // One thread reads all zones while the others parse.
                zones: (number == 0 && !maps.zones_by_batch).then_some(Job::Zones { part: None }),
                layers: None,
                reader,
                room: &mut room,
                chunks: Vec::new(),
                turns,
                issued: 0,
                bytes: 0,
                budget: plan.batch_bytes,
                ended: false,
                watched: &mut watched,
            };
            crew.work(&mut parsing)?;
            tracing::debug!(target: "portfolio", "a batch is parsed");
            let Parsing {
                chunks,
                turns,
                layers,
                ..
            } = parsing;
            let chunks: Vec<Chunk> = chunks.into_iter().flatten().collect();
            if let Some(layers) = layers {
                let layers = Arc::new(layers);
                zones = Some(Zones { number, layers });
            }
            if chunks.is_empty() {
                break;
            }
            if maps.zones_by_batch {
                zones = None;
            }
            let zones = match &zones {
                Some(zones) => zones,
                None => zones.insert(match zones::part_of(&chunks) {
                    Some(part) => zones::read(crew, number, part)?,
                    // No row could be read: no zone is asked for.
                    None => Zones::none(number),
                }),
            };
            batch(crew, zones, chunks, turns, &mut room, sink, &mut watched)?;
        }
        sink.end()
    })
}

/// Progress, told to whoever looks on.
pub(super) struct Watched<'a, 'w> {
    progress: Progress,
    watch: &'a mut Watch<'w>,
}

impl Watched<'_, '_> {
    pub(super) fn tell(&mut self, more: impl FnOnce(&mut Progress)) -> Result<(), RunError> {
        more(&mut self.progress);
        if (self.watch)(self.progress) {
            Ok(())
        } else {
            Err(RunError::Stopped)
        }
    }
}

/// Surveys and answers the rows of a batch.
fn batch(
    crew: &Crew,
    zones: &Zones,
    chunks: Vec<Chunk>,
    mut turns: Vec<Turn>,
    room: &mut Room,
    sink: &mut dyn Sink,
    watched: &mut Watched<'_, '_>,
) -> Result<(), RunError> {
    crew.prepare(zones)?;
    order::sort(&mut turns, crew.size());
    let batch: Batch = Arc::new(chunks);
    let parts = jobs(&turns, crew.size());
    let sizes = batch.iter().map(|chunk| chunk.rows.len());
    let mut survey = Survey {
        zones: zones.clone(),
        turns: Arc::new(turns),
        parts,
        readings: sizes.map(|rows| room.readings(rows)).collect(),
        unusual: batch.iter().map(|_| HashMap::new()).collect(),
        batch,
        watched,
    };
    tracing::debug!(target: "portfolio", "its places are in order");
    crew.work(&mut survey)?;
    tracing::debug!(target: "portfolio", "its places are read");
    let Survey {
        batch,
        readings,
        unusual,
        turns,
        ..
    } = survey;
    room.put_turns(Arc::into_inner(turns));
    let mut answering = Answering {
        zones: zones.clone(),
        batch,
        readings,
        unusual,
        issued: 0,
        written: 0,
        waiting: BTreeMap::new(),
        room,
        sink,
        watched,
    };
    crew.work(&mut answering)?;
    let Answering { batch, room, .. } = answering;
    room.put_chunks(Arc::into_inner(batch));
    Ok(())
}
