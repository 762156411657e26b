//! CSV: the file is cut at record ends here, and parsed in [`records`].

mod cut;
mod open;
mod records;

use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use self::cut::{Cut, cut};
pub(in crate::table) use self::records::TextRecords;
use crate::table::block::{Block, Content};
use crate::table::fault::shown;
use crate::table::{Position, RecordFault, TableError};

/// A record may have this many bytes, 1 MiB. A longer one is mostly a quote that is never
/// closed (common practice, no source).
pub const LONGEST_RECORD: usize = 1 << 20;

/// How much is read at least at a time.
const CHUNK: usize = 64 * 1024;

/// Cuts a CSV file into blocks that end where a record ends.
pub(super) struct TextReader {
    path: PathBuf,
    input: Input,
    bytes: Option<u64>,
    columns: Arc<[String]>,
    /// What was read and not yet given out; it begins at `byte`, in `line`.
    buffer: Vec<u8>,
    byte: u64,
    line: u64,
    is_at_end: bool,
    /// Where the first record after the header begins.
    first: u64,
}

enum Input {
    File(File),
    Stdin(std::io::Stdin),
}

impl TextReader {
    pub(super) const fn bytes(&self) -> Option<u64> {
        self.bytes
    }

    pub(super) const fn position(&self) -> Position {
        Position::Text {
            byte: self.byte,
            line: self.line,
        }
    }

    pub(super) fn next_block(&mut self, limit: usize) -> Result<Option<Block>, TableError> {
        let mut wanted = limit.max(1);
        loop {
            self.fill(wanted)?;
            match cut(&self.buffer, limit.max(1), self.is_at_end) {
                Cut::Nothing => return Ok(None),
                Cut::Records(length) => return Ok(Some(self.records(length))),
                Cut::Fault(problem) => return self.fault(problem).map(Some),
                Cut::Unfinished => wanted = self.buffer.len() + CHUNK.max(self.buffer.len()),
            }
        }
    }

    pub(super) fn seek(&mut self, position: Position) -> Result<(), TableError> {
        let refused = |found: String| {
            let accepted = "a place between two records of this very file";
            TableError::refused(&self.path, "position", found, accepted)
        };
        let Position::Text { byte, line } = position else {
            return Err(refused(format!("{position:?} is none of a CSV file")));
        };
        let Input::File(file) = &mut self.input else {
            return Err(refused("standard input is read only once".to_owned()));
        };
        let failed = TableError::system(&self.path, "reading");
        let mut before = [0];
        file.seek(SeekFrom::Start(byte.saturating_sub(1)))
            .and_then(|_| file.read(&mut before))
            .map_err(&failed)?;
        let is_end = Some(byte) == self.bytes;
        let is_start = before == [b'\n'] || byte == self.first;
        if byte < self.first || line < 2 || !(is_start || is_end) {
            return Err(refused(format!("no record begins at byte {byte}")));
        }
        file.seek(SeekFrom::Start(byte)).map_err(failed)?;
        self.buffer.clear();
        (self.byte, self.line, self.is_at_end) = (byte, line, false);
        Ok(())
    }

    /// Reads until the buffer has so many bytes, or to the end.
    fn fill(&mut self, wanted: usize) -> Result<(), TableError> {
        let missing = wanted.saturating_sub(self.buffer.len());
        if missing == 0 || self.is_at_end {
            return Ok(());
        }
        let missing = missing.max(CHUNK) as u64;
        let read = match &mut self.input {
            Input::File(file) => file.take(missing).read_to_end(&mut self.buffer),
            Input::Stdin(stdin) => stdin.lock().take(missing).read_to_end(&mut self.buffer),
        };
        let read = read.map_err(TableError::system(&self.path, "reading"))?;
        self.is_at_end = (read as u64) < missing;
        Ok(())
    }

    /// The first `length` bytes of the buffer as a block.
    fn records(&mut self, length: usize) -> Block {
        let rest = self.buffer.split_off(length);
        let text = std::mem::replace(&mut self.buffer, rest);
        let lines = memchr::memchr_iter(b'\n', &text).count();
        self.block(length, lines, Content::Text(text))
    }

    /// The record at the start of the buffer as a fault. Only its first line is passed over:
    /// where a quote is not closed, the lines after it may well be records.
    fn fault(&mut self, problem: &'static str) -> Result<Block, TableError> {
        let fault = RecordFault {
            line: self.line,
            field: "record".to_owned(),
            value: shown(first_line(&self.buffer)),
            problem: problem.to_owned(),
            accepted: format!(
                "a record of at most {LONGEST_RECORD} bytes, every quoted value closed by a quote, a quote within it written twice"
            ),
        };
        let mut passed = 0;
        let lines = loop {
            if let Some(end) = memchr::memchr(b'\n', &self.buffer) {
                self.buffer.drain(..=end);
                passed += end + 1;
                break 1;
            }
            passed += self.buffer.len();
            self.buffer.clear();
            if self.is_at_end {
                break 0;
            }
            self.fill(CHUNK)?;
        };
        Ok(self.block(passed, lines, Content::Fault(fault)))
    }

    fn block(&mut self, length: usize, lines: usize, content: Content) -> Block {
        let start = self.position();
        self.byte += length as u64;
        self.line += lines as u64;
        Block {
            columns: Arc::clone(&self.columns),
            start,
            end: self.position(),
            content,
        }
    }
}

fn first_line(text: &[u8]) -> &[u8] {
    memchr::memchr(b'\n', text).map_or(text, |end| &text[..end])
}

/// The path that standard input has in messages.
fn stdin_path() -> &'static Path {
    Path::new("standard input")
}
