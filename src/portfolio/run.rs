//! The run: batch after batch through three phases.
//!
//! 1. *Parse.* Blocks of the input become rows, on all threads, until the memory for a batch
//!    is used.
//! 2. *Survey.* The places of the batch are put in the order of the terrain's tiles and read:
//!    zones, ground, levels. Each tile is decoded once.
//! 3. *Answer.* Chunk after chunk, in the order of the input, each row is assessed from its
//!    readings and written.

use std::collections::{BTreeMap, HashMap};
use std::ops::Range;
use std::sync::Arc;

use super::chunk::Chunk;
use super::crew::{Crew, Maps, Phase};
use super::order::{RowNumber, Turn, jobs};
use super::stored::{Packed, Unusual};
use super::worker::{Answers, Batch, Done, Job};
use super::zones::{self, Zones};
use super::{Plan, RunError};
use crate::hazard::SharedZones;
use crate::table::{Position, TableReader};

/// Takes the answers of a run, in the order of the input.
pub trait Sink {
    /// Takes answers; the input goes on at `end`.
    ///
    /// # Errors
    /// [`RunError`] where they cannot be written, or where enough is enough.
    fn take(&mut self, answers: &Answers, end: Position) -> Result<(), RunError>;
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
        for number in 0.. {
            let mut parsing = Parsing {
                // One thread reads all zones while the others parse.
                zones: (number == 0 && !maps.zones_by_batch).then_some(Job::Zones { part: None }),
                layers: None,
                reader,
                chunks: Vec::new(),
                issued: 0,
                bytes: 0,
                budget: plan.batch_bytes,
                ended: false,
                watched: &mut watched,
            };
            crew.work(&mut parsing)?;
            tracing::debug!(target: "portfolio", "a batch is parsed");
            let (chunks, layers) = (parsing.chunks, parsing.layers);
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
                None => zones.insert(zones::read(crew, number, zones::part_of(&chunks))?),
            };
            batch(crew, zones, chunks, sink, &mut watched)?;
        }
        Ok(())
    })
}

/// Progress, told to whoever looks on.
struct Watched<'a, 'w> {
    progress: Progress,
    watch: &'a mut Watch<'w>,
}

impl Watched<'_, '_> {
    fn tell(&mut self, more: impl FnOnce(&mut Progress)) -> Result<(), RunError> {
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
    mut chunks: Vec<Chunk>,
    sink: &mut dyn Sink,
    watched: &mut Watched<'_, '_>,
) -> Result<(), RunError> {
    let turns = turns(&mut chunks);
    let batch: Batch = Arc::new(chunks);
    let parts = jobs(&turns, crew.size());
    let sizes = batch.iter().map(|chunk| chunk.rows.len());
    let mut survey = Survey {
        zones: zones.clone(),
        batch: Arc::clone(&batch),
        // The keys have served.
        turns: Arc::new(
            turns
                .into_iter()
                .map(|(_, chunk, row)| (chunk, row))
                .collect(),
        ),
        parts,
        readings: sizes.map(|rows| vec![Packed::NOTHING; rows]).collect(),
        unusual: batch.iter().map(|_| HashMap::new()).collect(),
        watched,
    };
    tracing::debug!(target: "portfolio", "its places are in order");
    crew.work(&mut survey)?;
    tracing::debug!(target: "portfolio", "its places are read");
    let Survey {
        readings, unusual, ..
    } = survey;
    let mut answering = Answering {
        zones: zones.clone(),
        batch,
        readings,
        unusual,
        issued: 0,
        written: 0,
        waiting: BTreeMap::new(),
        sink,
        watched,
    };
    crew.work(&mut answering)
}

/// The rows in the order of the terrain's tiles.
fn turns(chunks: &mut [Chunk]) -> Vec<Turn> {
    let count = chunks.iter().map(|chunk| chunk.rows.len()).sum();
    let mut turns: Vec<Turn> = Vec::with_capacity(count);
    for (number, chunk) in chunks.iter_mut().enumerate() {
        let keys = std::mem::take(&mut chunk.keys);
        let of_chunk = keys.into_iter().enumerate();
        turns.extend(of_chunk.map(|(row, key)| (key, as_u32(number), as_u32(row))));
    }
    turns.sort_unstable();
    turns
}

fn as_u32(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

struct Parsing<'a, 'b, 'w> {
    /// The job of reading zones, until somebody has it.
    zones: Option<Job>,
    layers: Option<Vec<Arc<SharedZones>>>,
    reader: &'a mut TableReader,
    chunks: Vec<Option<Chunk>>,
    issued: usize,
    bytes: usize,
    budget: usize,
    ended: bool,
    watched: &'a mut Watched<'b, 'w>,
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

struct Survey<'a, 'b, 'w> {
    zones: Zones,
    batch: Batch,
    turns: Arc<Vec<RowNumber>>,
    /// For each worker the jobs that are left.
    parts: Vec<Vec<Range<usize>>>,
    readings: Vec<Vec<Packed>>,
    unusual: Vec<HashMap<u32, Unusual>>,
    watched: &'a mut Watched<'b, 'w>,
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

struct Answering<'a, 'b, 'w> {
    zones: Zones,
    batch: Batch,
    readings: Vec<Vec<Packed>>,
    unusual: Vec<HashMap<u32, Unusual>>,
    issued: usize,
    written: usize,
    /// Answers whose turn has not come.
    waiting: BTreeMap<usize, Answers>,
    sink: &'a mut dyn Sink,
    watched: &'a mut Watched<'b, 'w>,
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
        let Done::Answered { number, answers } = done else {
            return Err(RunError::ThreadEnded);
        };
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
