//! Rows that fit in memory, sorted, and on the disk as a run.

use std::fs::File;
use std::io::{self, BufReader, BufWriter, Read, Seek, Write};
use std::path::Path;

/// Rows in memory with their keys.
pub(super) struct Gathered {
    /// Bytes that rows and keys may take.
    room: usize,
    text: Vec<u8>,
    rows: Vec<Entry>,
}

/// A row: its key, and where its text is. In the order of rows, `start` grows, so that sorting
/// by both keeps the order of equal keys.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Entry {
    key: u64,
    start: usize,
    length: usize,
}

impl Gathered {
    pub(super) const fn new(memory: usize) -> Self {
        Self {
            // A vector may take twice what is in it.
            room: memory / 2,
            text: Vec::new(),
            rows: Vec::new(),
        }
    }

    /// Whether there are rows already and one more would be too much.
    pub(super) fn is_full_with(&self, row: &[u8]) -> bool {
        let keys = (self.rows.len() + 1) * size_of::<Entry>();
        !self.rows.is_empty() && self.text.len() + row.len() + keys > self.room
    }

    pub(super) fn push(&mut self, key: u64, row: &[u8]) {
        self.rows.push(Entry {
            key,
            start: self.text.len(),
            length: row.len(),
        });
        self.text.extend_from_slice(row);
    }

    /// Hands out the rows in their order and forgets them.
    pub(super) fn each(
        &mut self,
        mut visit: impl FnMut(u64, &[u8]) -> io::Result<()>,
    ) -> io::Result<()> {
        self.rows.sort_unstable();
        for row in &self.rows {
            visit(row.key, &self.text[row.start..row.start + row.length])?;
        }
        self.rows.clear();
        self.text.clear();
        Ok(())
    }

    /// Puts the rows into a run on the disk and forgets them.
    pub(super) fn store(&mut self, folder: &Path) -> io::Result<Run> {
        let mut run = RunWriter::new(folder)?;
        self.each(|key, row| run.push(key, row))?;
        run.finish()
    }
}

/// Sorted rows in a temporary file, which goes away with this value.
pub(super) struct Run(File);

/// Writes a run.
pub(super) struct RunWriter(BufWriter<File>);

impl RunWriter {
    pub(super) fn new(folder: &Path) -> io::Result<Self> {
        tempfile::tempfile_in(folder).map(|file| Self(BufWriter::new(file)))
    }

    /// Appends a row, which must not come before those that are there.
    pub(super) fn push(&mut self, key: u64, row: &[u8]) -> io::Result<()> {
        self.0.write_all(&key.to_le_bytes())?;
        self.0.write_all(&(row.len() as u64).to_le_bytes())?;
        self.0.write_all(row)
    }

    pub(super) fn finish(self) -> io::Result<Run> {
        let mut file = self
            .0
            .into_inner()
            .map_err(io::IntoInnerError::into_error)?;
        file.rewind()?;
        Ok(Run(file))
    }
}

/// Reads a run row by row.
pub(super) struct RunReader {
    file: BufReader<File>,
    /// The row at hand.
    pub(super) row: Vec<u8>,
}

impl RunReader {
    pub(super) fn new(run: Run, buffer: usize) -> Self {
        Self {
            file: BufReader::with_capacity(buffer, run.0),
            row: Vec::new(),
        }
    }

    /// Takes the next row and gives its key; `None` after the last.
    pub(super) fn advance(&mut self) -> io::Result<Option<u64>> {
        let mut number = [0; 8];
        if self.file.by_ref().take(1).read(&mut number)? == 0 {
            return Ok(None);
        }
        self.file.read_exact(&mut number[1..])?;
        let key = u64::from_le_bytes(number);
        self.file.read_exact(&mut number)?;
        let length = usize::try_from(u64::from_le_bytes(number)).unwrap_or(usize::MAX);
        self.row.resize(length, 0);
        self.file.read_exact(&mut self.row)?;
        Ok(Some(key))
    }
}
