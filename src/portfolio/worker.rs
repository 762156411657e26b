//! One thread: it parses blocks, reads maps, and answers rows.

use std::borrow::Cow;
use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use smallvec::SmallVec;

use super::answer;
use super::chunk::{Chunk, RowFault};
use super::order::RowNumber;
use super::row::{OpeningRow, Row, RowReader};
use super::same_ids::{IdAt, id_hash};
use super::stored::{Packed, Unusual};
use super::summary::{RowFigures, Summary};
use super::zones::{ReadZones, Zones};
use super::{Own, Plan, RunError, site_of_row};
use crate::assess::{Asked, AssessError, Assessment, Method, SillAsked, assess_read, read_place};
use crate::design::Base;
use crate::hazard::{Part, SharedZones};
use crate::quantity::{AnnualChance, Length, UnitSystem};
use crate::site::{Site, Threshold};
use crate::table::{Block, RecordFault};

/// The rows of a batch.
pub(super) type Batch = Arc<Vec<Chunk>>;

/// A row of a batch.
type Stated<'batch> = Row<&'batch OpeningRow>;

/// Something to do.
pub(super) enum Job {
    /// To parse a block.
    Parse { number: usize, block: Block },
    /// To read the zone layers.
    Zones { part: Option<Part> },
    /// To read the maps at places that lie together.
    Survey {
        zones: Zones,
        batch: Batch,
        turns: Arc<Vec<RowNumber>>,
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
        answers: Answers,
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
    /// What was counted.
    pub summary: Summary,
}

/// What a thread has at hand.
pub(super) struct Worker<'a> {
    plan: &'a Plan,
    own: Own,
    read_zones: &'a ReadZones<'a>,
    /// Which zones its sources have.
    zones: Option<u64>,
    /// With the units of the row, or those that the user asks for.
    methods: [Method; 2],
    site: Site,
    /// Water over the ground that a wall takes of which nothing is stated, where the rule
    /// never puts the design level below the flood level.
    wall: Option<Length>,
}

impl Drop for Worker<'_> {
    fn drop(&mut self) {
        let tiles = self.own.sources.terrain.tiles_decoded();
        tracing::debug!(target: "portfolio", tiles, "terrain tiles decoded by a thread");
    }
}

impl<'a> Worker<'a> {
    pub(super) fn new(plan: &'a Plan, own: Own, read_zones: &'a ReadZones<'a>) -> Option<Self> {
        let method = |units| Method {
            units: plan.units.unwrap_or(units),
            ..plan.method.clone()
        };
        Some(Self {
            plan,
            own,
            read_zones,
            zones: None,
            methods: [method(UnitSystem::Us), method(UnitSystem::Si)],
            site: site_of_row::empty()?,
            wall: plan
                .method
                .limits
                .wall(None)
                .depth
                .filter(|_| never_below(&plan.method)),
        })
    }

    pub(super) fn work(&mut self, job: Job) -> Result<Done, RunError> {
        match job {
            Job::Parse { number, block } => Ok(Done::Parsed {
                number,
                chunk: self.parse(&block),
            }),
            Job::Zones { part } => {
                let layers = (self.read_zones)(part).map_err(RunError::Open)?;
                Ok(Done::Zones { layers })
            }
            Job::Survey {
                zones,
                batch,
                turns,
                range,
            } => {
                self.take_zones(&zones)?;
                self.survey(&batch, &turns, range)
            }
            Job::Answer {
                zones,
                batch,
                number,
                readings,
                unusual,
            } => {
                self.take_zones(&zones)?;
                let answers = match batch.get(number) {
                    Some(chunk) => self.answer(chunk, &readings, unusual)?,
                    None => Answers::default(),
                };
                Ok(Done::Answered { number, answers })
            }
        }
    }

    /// Makes this thread's own maps of zones that others share.
    fn take_zones(&mut self, zones: &Zones) -> Result<(), RunError> {
        if self.zones == Some(zones.number) {
            return Ok(());
        }
        // Those before are given up first: of two batches only one has to fit the memory.
        self.own.sources.zones = Vec::new();
        let maps = zones.layers.iter().map(|layer| layer.map());
        self.own.sources.zones = maps.collect::<Result<_, _>>().map_err(AssessError::from)?;
        self.zones = Some(zones.number);
        Ok(())
    }

    fn parse(&self, block: &Block) -> Chunk {
        let to_place = self.own.places.as_deref();
        let Plan {
            columns,
            terrain_datum,
            ..
        } = self.plan;
        let mut reader = RowReader::new(columns, *terrain_datum, to_place);
        let mut chunk = Chunk::parse(block, &mut reader, columns);
        chunk.locate(&self.own.sources);
        chunk
    }

    fn survey(
        &self,
        batch: &[Chunk],
        turns: &[RowNumber],
        range: Range<usize>,
    ) -> Result<Done, RunError> {
        let sources = &self.own.sources;
        let [method, _] = &self.methods;
        let mut readings = Vec::with_capacity(range.len());
        let mut unusual = Vec::new();
        let turns = turns.get(range.clone()).unwrap_or_default();
        let row = |(chunk, row): &RowNumber| batch.get(*chunk as usize)?.rows.get(*row as usize);
        // The rows lie all over the batch: fetched together they do not wait for each other.
        for (number, turns) in turns.chunks(TOGETHER).enumerate() {
            let asked: SmallVec<[_; TOGETHER]> = turns
                .iter()
                .filter_map(row)
                .map(|row| self.asked(&row))
                .collect();
            for (position, asked) in asked.into_iter().enumerate() {
                let (packed, rest) = match read_place(asked, sources, method) {
                    Ok(read) => Packed::of(read, sources),
                    Err(AssessError::Crs(error)) => match turns.get(position).and_then(row) {
                        Some(row) => {
                            Packed::refused(fault(&row, "coordinates", &error.to_string(), PLACE))
                        }
                        None => (Packed::NOTHING, None),
                    },
                    Err(error) => return Err(error.into()),
                };
                readings.push(packed);
                unusual.extend(rest.map(|rest| (number * TOGETHER + position, rest)));
            }
        }
        Ok(Done::Surveyed {
            range,
            readings,
            unusual,
        })
    }

    /// What is asked of the maps for a row. Of the ground around a threshold without an opening
    /// only what decides is asked; a barrier is designed with what is really there.
    fn asked(&self, row: &Stated<'_>) -> Asked<'static> {
        let sill = match (row.opening, row.threshold) {
            (None, Threshold::Stated(elevation)) => Some(SillAsked {
                elevation,
                wall: self.wall,
            }),
            _ => None,
        };
        Asked {
            location: row.location,
            outline: None,
            sill,
        }
    }

    fn answer(
        &mut self,
        chunk: &Chunk,
        readings: &[Packed],
        mut unusual: HashMap<u32, Unusual>,
    ) -> Result<Answers, RunError> {
        let mut answers = Answers {
            rejects: chunk.faults.clone(),
            ids: chunk.ids_of_faults.clone(),
            lines: Vec::with_capacity(chunk.rows.len() * LINE_BYTES),
            ..Answers::default()
        };
        let widths = self.plan.columns.has_widths();
        for (number, (row, packed)) in chunk.rows.iter().zip(readings).enumerate() {
            let lead = chunk.lead(number);
            let id = id_of(lead);
            let opening = row
                .opening
                .as_ref()
                .map_or("", |opening| opening.opening.as_str());
            answers.ids.push((id_hash(&id, opening), row.line));
            site_of_row::fill(&mut self.site, &row);
            let [us, si] = &self.methods;
            let method = match row.units {
                UnitSystem::Us => us,
                UnitSystem::Si => si,
            };
            let position = u32::try_from(number).unwrap_or(u32::MAX);
            let read = packed.readings(position, &mut unusual, &self.own.sources, method);
            let outcome = match read {
                Ok(read) => assess_read(&self.site, read, &self.own.sources, method)
                    .map_err(|error| of_row(&row, error)),
                Err(fault) => Err(Ok(fault)),
            };
            match outcome {
                Ok(assessment) => {
                    answer::write(&mut answers.lines, lead, &assessment, widths);
                    summarise(&mut answers.summary, &id, &row, &assessment);
                }
                Err(fault) => answers.rejects.push(RowFault {
                    id: id.into_owned(),
                    fault: fault?,
                }),
            }
        }
        answers.rejects.sort_by_key(|reject| reject.fault.line);
        for reject in &answers.rejects {
            answers
                .summary
                .reject(&reject.fault.field, &reject.fault.problem);
        }
        Ok(answers)
    }
}

/// Bytes that lines of the result mostly take.
const LINE_BYTES: usize = 300;

/// Rows whose places are fetched together.
const TOGETHER: usize = 32;

/// Whether the design level is never below the flood level.
fn never_below(method: &Method) -> bool {
    let mut terms = method.rule.terms.iter();
    terms.any(|term| {
        term.base == Base::FloodLevel
            && term.add >= Length::default()
            && term.occupancies.is_empty()
    })
}

const PLACE: &str = "coordinates that every map's system can express";

/// A fault of the row itself, or one that stops the run.
fn of_row(row: &Stated<'_>, error: AssessError) -> Result<RecordFault, RunError> {
    match error {
        AssessError::Datum(error) => {
            let problem = format!(
                "it is on {}, but {} is on {}: {}",
                error.threshold_datum, error.what, error.datum, error.error
            );
            let accepted = "a height on a datum that grids (--grids) or a stated offset (--datum-offset) lead to";
            Ok(fault(row, "threshold", &problem, accepted))
        }
        AssessError::Crs(error) => Ok(fault(row, "coordinates", &error.to_string(), PLACE)),
        AssessError::Barrier { error, .. } | AssessError::Behind(error) => Ok(fault(
            row,
            "width",
            &error.to_string(),
            "an opening that a barrier fits",
        )),
        AssessError::Datums(error) => Ok(fault(
            row,
            "vertical_datum",
            &error.to_string(),
            "one datum for all heights",
        )),
        error @ (AssessError::Terrain(_) | AssessError::Level(_)) => Err(error.into()),
    }
}

fn fault(row: &Stated<'_>, field: &str, problem: &str, accepted: &str) -> RecordFault {
    RecordFault {
        line: row.line,
        field: field.to_owned(),
        value: row.shown(field),
        problem: problem.to_owned(),
        accepted: accepted.to_owned(),
    }
}

/// The id at the start of a line of the result; nearly every id stands there as it is.
fn id_of(lead: &[u8]) -> Cow<'_, str> {
    let plain = lead.split(|byte| *byte == b',').next().unwrap_or_default();
    match std::str::from_utf8(plain) {
        Ok(id) if !id.starts_with('"') => Cow::Borrowed(id),
        _ => Cow::Owned(quoted_id(lead)),
    }
}

fn quoted_id(lead: &[u8]) -> String {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(lead);
    let mut record = csv::StringRecord::new();
    let found = reader.read_record(&mut record).unwrap_or(false);
    let id = if found { record.get(0) } else { None };
    id.unwrap_or_default().to_owned()
}

fn summarise(summary: &mut Summary, id: &str, row: &Stated<'_>, assessment: &Assessment<'_>) {
    let Some(opening) = assessment.openings.first() else {
        return;
    };
    let codes: smallvec::SmallVec<[&'static str; 8]> = assessment
        .cautions
        .iter()
        .map(crate::verdict::Caution::code)
        .collect();
    summary.add(&RowFigures {
        id,
        location: Some(row.location),
        verdict: opening.verdict,
        zone: assessment
            .place
            .zone
            .as_ref()
            .map(|here| here.worst.code.as_str()),
        level_source: assessment
            .place
            .flood_level
            .as_ref()
            .map(|level| level.decided.source),
        protection_height: opening.protection_height,
        chance_at_sill: answer::chance_at_sill(opening).and_then(AnnualChance::new),
        threshold_is_estimate: assessment.site.threshold.is_estimate(),
        reason: opening.reasons.first().map(crate::verdict::Reason::code),
        cautions: &codes,
    });
}
