//! Parsing the records of a block.

use csv::{ReaderBuilder, StringRecord, Terminator};

use super::LONGEST_RECORD;
use crate::table::block::{Cells, Record};
use crate::table::fault::shown;
use crate::table::{Position, RecordFault};

/// Parses the records of a CSV text, one after the other into the same memory.
#[derive(Debug)]
pub(in crate::table) struct TextRecords<'text> {
    text: &'text [u8],
    columns: &'text [String],
    parser: csv::Reader<&'text [u8]>,
    /// `None` only while it is being filled.
    record: Option<StringRecord>,
    /// Lines of the file before this text.
    lines_before: u64,
}

impl<'text> TextRecords<'text> {
    pub(in crate::table) fn new(
        text: &'text [u8],
        start: Position,
        columns: &'text [String],
    ) -> Self {
        let first_line = match start {
            Position::Text { line, .. } => line,
            Position::Row { row } => row,
        };
        Self {
            text,
            columns,
            parser: parser(text),
            record: None,
            lines_before: first_line.saturating_sub(1),
        }
    }

    pub(in crate::table) fn next(&mut self) -> Option<Result<Record<'_>, RecordFault>> {
        let record = self.record.take().unwrap_or_default();
        let mut bytes = record.into_byte_record();
        let (line, raw) = loop {
            let start = self.parser.position().clone();
            // Reading from memory does not fail, and any number of values is accepted here.
            if !self.parser.read_byte_record(&mut bytes).unwrap_or(false) {
                return None;
            }
            let rest = &self.text[place(&start)..place(self.parser.position())];
            // The parser passes over empty lines before it takes a record.
            let empty = rest.iter().take_while(|byte| **byte == b'\n').count();
            let raw = &rest[empty..];
            if !raw.trim_ascii().is_empty() {
                break (self.lines_before + start.line() + empty as u64, raw);
            }
        };
        let (record, invalid) = match StringRecord::from_byte_record(bytes) {
            Ok(record) => (record, None),
            Err(error) => {
                let column = error.utf8_error().field();
                let bytes = error.into_byte_record();
                let value = shown(bytes.get(column).unwrap_or_default());
                (
                    StringRecord::from_byte_record_lossy(bytes),
                    Some((column, value)),
                )
            }
        };
        let record = self.record.insert(record);
        let fault = fault(record, invalid, raw, self.columns).map(|mut fault| {
            fault.line = line;
            fault
        });
        Some(match fault {
            Some(fault) => Err(fault),
            None => Ok(Record {
                line,
                cells: Cells::Text { record, raw },
                point: None,
            }),
        })
    }
}

/// What keeps a parsed record from being used, its line not yet filled in.
fn fault(
    record: &StringRecord,
    invalid: Option<(usize, String)>,
    raw: &[u8],
    columns: &[String],
) -> Option<RecordFault> {
    let whole = |problem: String, accepted: &str| {
        Some(RecordFault {
            line: 0,
            field: "record".to_owned(),
            value: shown(raw),
            problem,
            accepted: accepted.to_owned(),
        })
    };
    let field = |column: usize, value: String, problem: &str, accepted: &str| {
        let name = columns.get(column).map_or("record", String::as_str);
        Some(RecordFault {
            line: 0,
            field: name.to_owned(),
            value,
            problem: problem.to_owned(),
            accepted: accepted.to_owned(),
        })
    };
    if raw.len() > LONGEST_RECORD {
        return whole(
            format!("it is {} bytes long", raw.len()),
            "a record of at most 1 MiB",
        );
    }
    if let Some((column, value)) = invalid {
        return field(column, value, "it is not UTF-8", "text in UTF-8");
    }
    if record.len() != columns.len() {
        let values = match record.len() {
            1 => "1 value".to_owned(),
            many => format!("{many} values"),
        };
        return whole(
            format!(
                "it has {values}, the header names {} columns",
                columns.len()
            ),
            "a value for every column, an empty one where it is missing; a value with a comma in quotes",
        );
    }
    if memchr::memchr(0, raw).is_some() {
        let column = record.iter().position(|value| value.contains('\0'))?;
        let value = record.get(column).unwrap_or_default().to_owned();
        return field(
            column,
            shown(value.as_bytes()),
            "it holds a zero byte",
            "text",
        );
    }
    None
}

/// A parser of records that end with a line feed; a carriage return before it is left to be
/// trimmed.
pub(super) fn parser(text: &[u8]) -> csv::Reader<&[u8]> {
    ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .terminator(Terminator::Any(b'\n'))
        .from_reader(text)
}

fn place(position: &csv::Position) -> usize {
    usize::try_from(position.byte()).unwrap_or(usize::MAX)
}
