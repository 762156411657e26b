//! A stretch of the input, parsed: its rows, and what could not be read.

use super::columns::Columns;
use super::kept_row::Rows;
use super::room::make_room;
use super::row_reader::RowReader;
use super::same_ids::{IdAt, id_hash};
use super::{Coordinates, Role};
use crate::assess::Sources;
use crate::table::{Block, Position, RecordFault, csv_text};

/// Rows of one block of the input.
#[derive(Debug)]
pub(super) struct Chunk {
    pub(super) rows: Rows,
    /// For each row the start of its line of the result: id and coordinates as the input
    /// writes them, one after the other.
    lead: Vec<u8>,
    ends: Vec<u32>,
    pub(super) faults: Vec<RowFault>,
    /// The ids of the rows at fault, as far as they could be read.
    pub(super) ids_of_faults: Vec<IdAt>,
    /// Bytes of the input that it was read from.
    pub(super) input_bytes: u64,
    /// Where the input goes on.
    pub(super) end: Position,
}

/// The memory of a chunk without its rows.
#[derive(Default)]
pub(super) struct Emptied {
    rows: Rows,
    lead: Vec<u8>,
    ends: Vec<u32>,
}

/// A row that gives no result.
#[derive(Clone, Debug)]
pub struct RowFault {
    /// Its id, as far as it could be read.
    pub id: String,
    /// What is wrong.
    pub fault: RecordFault,
}

impl RowFault {
    /// Memory that it takes, bytes.
    fn bytes(&self) -> usize {
        let RecordFault {
            field,
            value,
            problem,
            accepted,
            ..
        } = &self.fault;
        let texts = [&self.id, field, value, problem, accepted];
        let text: usize = texts.iter().map(|text| text.capacity()).sum();
        size_of::<Self>() + size_of::<IdAt>() + text
    }
}

impl Chunk {
    /// Parses a block into the memory of an earlier chunk.
    pub(super) fn parse(
        block: &Block,
        reader: &mut RowReader<'_>,
        columns: &Columns,
        emptied: Emptied,
    ) -> Self {
        let Emptied {
            rows,
            lead: starts,
            ends,
        } = emptied;
        let mut chunk = Self {
            rows,
            lead: starts,
            ends,
            faults: Vec::new(),
            ids_of_faults: Vec::new(),
            input_bytes: block.bytes() as u64,
            end: block.end(),
        };
        let expected = block.records_hint();
        chunk.rows.expect(expected);
        make_room(&mut chunk.ends, expected);
        if chunk.lead.capacity() == 0 {
            chunk.lead.reserve_exact(expected * LEAD_BYTES);
        }
        let mut records = block.records();
        while let Some(record) = records.next() {
            let record = match record {
                Ok(record) => record,
                Err(fault) => {
                    let id = String::new();
                    chunk.faults.push(RowFault { id, fault });
                    continue;
                }
            };
            match reader.read(&record) {
                Ok(row) => {
                    chunk.rows.push(row);
                    lead(&mut chunk.lead, &record, columns);
                    chunk
                        .ends
                        .push(u32::try_from(chunk.lead.len()).unwrap_or(u32::MAX));
                }
                Err(fault) => {
                    let text = |role| columns.at(role).map_or("", |column| record.get(column));
                    let id = text(Role::Id).to_owned();
                    if !id.is_empty() {
                        let hash = id_hash(&id, text(Role::Opening));
                        chunk.ids_of_faults.push((hash, record.line()));
                    }
                    chunk.faults.push(RowFault { id, fault });
                }
            }
        }
        // Many chunks wait: none keeps much that it grew by.
        chunk.lead.shrink_to(chunk.lead.len() / 4 * 5);
        chunk
    }

    /// Its memory, for another chunk.
    pub(super) fn emptied(mut self) -> Emptied {
        self.rows.clear();
        self.lead.clear();
        self.ends.clear();
        Emptied {
            rows: self.rows,
            lead: self.lead,
            ends: self.ends,
        }
    }

    /// Where each row lies, for the order in which the terrain is read.
    pub(super) fn keys(&self, sources: &Sources) -> Vec<u64> {
        let places = self.rows.locations();
        places
            .map(|place| super::order::key(place, &sources.terrain))
            .collect()
    }

    /// The start of a row's line of the result, with a comma at its end.
    pub(super) fn lead(&self, row: usize) -> &[u8] {
        let start = row.checked_sub(1).and_then(|before| self.ends.get(before));
        let start = start.copied().unwrap_or_default() as usize;
        let end = self.ends.get(row).copied().unwrap_or_default() as usize;
        self.lead.get(start..end).unwrap_or_default()
    }

    /// Memory of its rows until they are answered, bytes.
    pub(super) fn bytes(&self) -> usize {
        let row = size_of::<super::stored::Packed>() + size_of::<super::order::Turn>();
        let faults: usize = self.faults.iter().map(RowFault::bytes).sum();
        self.lead.capacity()
            + self.rows.bytes()
            + self.ends.capacity() * size_of::<u32>()
            + self.rows.len() * row
            + faults
    }
}

/// Bytes of id and coordinates that most rows do not exceed.
const LEAD_BYTES: usize = 40;

fn lead(text: &mut Vec<u8>, record: &crate::table::Record<'_>, columns: &Columns) {
    for role in [Role::Id, Role::Building, Role::Opening] {
        if let Some(column) = columns.at(role) {
            csv_text(text, record.get(column));
            text.push(b',');
        }
    }
    match columns.coordinates {
        Coordinates::Columns(east, north) => {
            for column in [east, north] {
                csv_text(text, record.get(column));
                text.push(b',');
            }
        }
        Coordinates::Point => {
            let (x, y) = record.point().unwrap_or((f64::NAN, f64::NAN));
            text.extend_from_slice(format!("{x},{y},").as_bytes());
        }
    }
}
