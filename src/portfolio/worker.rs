//! One thread: it parses blocks, reads maps, and answers rows.

use std::ops::Range;

use smallvec::SmallVec;

use super::chunk::{Chunk, Emptied};
use super::job::{Answers, Done, Job};
use super::order::Turn;
use super::row::{OpeningRow, Row};
use super::row_fault::{PLACE, fault};
use super::row_reader::RowReader;
use super::stored::Packed;
use super::summary::Summary;
use super::zones::{ReadZones, Zones};
use super::{Own, Plan, RunError, site_of_row};
use crate::assess::{Asked, AssessError, Method, SillAsked, read_place};
use crate::design::Base;
use crate::hazard::SharedZones;
use crate::quantity::{Length, UnitSystem};
use crate::site::{Site, Threshold};
use crate::table::Block;

/// What a thread has at hand.
pub(super) struct Worker<'a> {
    pub(super) plan: &'a Plan,
    pub(super) own: Own,
    read_zones: &'a ReadZones<'a>,
    /// Which zones its sources have.
    zones: Option<u64>,
    /// With the units of the row, or those that the user asks for.
    pub(super) methods: [Method; 2],
    pub(super) site: Site,
    /// Water over the ground that a wall takes of which nothing is stated, where the rule
    /// never puts the design level below the flood level.
    wall: Option<Length>,
    /// What the next stretch of rows is counted in.
    pub(super) counted: Summary,
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
            counted: Summary::default(),
        })
    }

    /// Does a job; `None` where nobody waits for what becomes of it.
    pub(super) fn work(&mut self, job: Job) -> Result<Option<Done>, RunError> {
        Ok(Some(match job {
            Job::Parse {
                number,
                block,
                emptied,
            } => {
                let chunk = self.parse(&block, emptied);
                Done::Parsed {
                    number,
                    keys: chunk.keys(&self.own.sources),
                    chunk,
                }
            }
            Job::Zones { part } => {
                let layers = (self.read_zones)(part).map_err(RunError::Open)?;
                Done::Zones { layers }
            }
            Job::Prepare { zones } => {
                self.take_zones(&zones)?;
                return Ok(None);
            }
            Job::Survey {
                zones,
                batch,
                turns,
                range,
            } => {
                self.take_zones(&zones)?;
                self.survey(&batch, &turns, range)?
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
                Done::Answered {
                    number,
                    answers: Box::new(answers),
                    readings,
                }
            }
        }))
    }

    /// Makes this thread's own maps of zones that others share.
    fn take_zones(&mut self, zones: &Zones) -> Result<(), RunError> {
        if self.zones == Some(zones.number) {
            return Ok(());
        }
        // Those before are given up first: of two batches only one has to fit the memory.
        self.own.sources.zones = Vec::new();
        let maps = zones.layers.iter().map(SharedZones::map);
        self.own.sources.zones = maps.collect::<Result<_, _>>().map_err(AssessError::from)?;
        self.zones = Some(zones.number);
        Ok(())
    }

    fn parse(&self, block: &Block, emptied: Emptied) -> Chunk {
        let to_place = self.own.places.as_deref();
        let Plan {
            columns,
            terrain_datum,
            ..
        } = self.plan;
        let mut reader = RowReader::new(columns, *terrain_datum, to_place);
        Chunk::parse(block, &mut reader, columns, emptied)
    }

    fn survey(
        &self,
        batch: &[Chunk],
        turns: &[Turn],
        range: Range<usize>,
    ) -> Result<Done, RunError> {
        let sources = &self.own.sources;
        let [method, _] = &self.methods;
        let mut readings = Vec::with_capacity(range.len());
        let mut unusual = Vec::new();
        let turns = turns.get(range.clone()).unwrap_or_default();
        let row = |(_, chunk, row): &Turn| batch.get(*chunk as usize)?.rows.get(*row as usize);
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
    fn asked(&self, row: &Row<&OpeningRow>) -> Asked<'static> {
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
}

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
