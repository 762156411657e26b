//! Rows that have the same id.
//!
//! Ids are kept as hashes of 64 bits with their lines; a quarter of a million of them at a time are
//! sorted and put aside in a temporary file, so that memory does not grow with the table. Two
//! different ids among ten million share a hash with a chance of three in a million.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::collections::binary_heap::PeekMut;
use std::fs::File;
use std::hash::BuildHasher as _;
use std::io::{BufReader, BufWriter, Read, Seek, Write};
use std::thread::JoinHandle;

use foldhash::quality::FixedState;

/// Hash of an id and the line that it stands in.
pub type IdAt = (u64, u64);

/// Gathers ids to find those that stand twice.
#[derive(Debug, Default)]
pub struct SameIds {
    fresh: Vec<IdAt>,
    runs: Vec<JoinHandle<std::io::Result<File>>>,
}

/// Ids that are kept in memory: 4 MiB of them, and as many that are being sorted.
const KEPT: usize = 1 << 18;

/// Bytes of a run that are read at once.
const READ: usize = 1 << 16;

/// Lines that are named; more help nobody.
const NAMED: usize = 20;

/// The hash of a row's id, with that of its opening where there is one row an opening.
#[must_use]
pub fn id_hash(id: &str, opening: &str) -> u64 {
    FixedState::default().hash_one((id, opening))
}

/// Lines with an id that an earlier line has.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Repeated {
    /// How many.
    pub count: u64,
    /// The first of them: the line, and the line before it with the same id.
    pub lines: Vec<(u64, u64)>,
}

impl SameIds {
    /// Adds rows.
    ///
    /// # Errors
    /// The operating system's, where no temporary file can be written.
    pub fn add(&mut self, ids: &[IdAt]) -> std::io::Result<()> {
        self.fresh.extend_from_slice(ids);
        if self.fresh.len() >= KEPT {
            self.put_aside()?;
        }
        Ok(())
    }

    /// Sorts what was gathered and writes it down, while more is gathered.
    fn put_aside(&mut self) -> std::io::Result<()> {
        let run = BufWriter::new(tempfile::tempfile()?);
        let fresh = std::mem::take(&mut self.fresh);
        self.runs
            .push(std::thread::spawn(move || sorted(fresh, run)));
        Ok(())
    }

    /// Looks for repeated ids on a thread of its own.
    #[must_use]
    pub fn search(self) -> JoinHandle<std::io::Result<Repeated>> {
        std::thread::spawn(move || self.repeated())
    }

    /// The rows that have an id that an earlier row has.
    ///
    /// # Errors
    /// As [`add`](Self::add).
    pub fn repeated(mut self) -> std::io::Result<Repeated> {
        self.fresh.sort_unstable();
        let mut sources: Vec<Box<dyn Iterator<Item = std::io::Result<IdAt>>>> = Vec::new();
        sources.push(Box::new(self.fresh.into_iter().map(Ok)));
        for run in self.runs {
            let ended = || std::io::Error::other("the thread that sorts ids ended early");
            let run = run.join().map_err(|_| ended())??;
            sources.push(Box::new(Run(BufReader::with_capacity(READ, run))));
        }
        let mut found = Repeated::default();
        let mut before: Option<IdAt> = None;
        let mut heads = BinaryHeap::new();
        for (number, source) in sources.iter_mut().enumerate() {
            if let Some(head) = source.next() {
                heads.push(Reverse((head?, number)));
            }
        }
        while let Some(mut first) = heads.peek_mut() {
            let Reverse((head, number)) = *first;
            match sources.get_mut(number).and_then(Iterator::next) {
                Some(next) => *first = Reverse((next?, number)),
                None => {
                    PeekMut::pop(first);
                }
            }
            if let Some((_, line)) = before.filter(|(id, _)| *id == head.0) {
                found.count += 1;
                found.lines.push((head.1, line));
                if found.lines.len() > 1000 * NAMED {
                    found.lines.sort_unstable();
                    found.lines.truncate(NAMED);
                }
            }
            before = Some(head);
        }
        found.lines.sort_unstable();
        found.lines.truncate(NAMED);
        Ok(found)
    }
}

fn sorted(mut ids: Vec<IdAt>, mut run: BufWriter<File>) -> std::io::Result<File> {
    ids.sort_unstable();
    for (id, line) in ids {
        run.write_all(&id.to_le_bytes())?;
        run.write_all(&line.to_le_bytes())?;
    }
    let mut file = run
        .into_inner()
        .map_err(std::io::IntoInnerError::into_error)?;
    file.rewind()?;
    Ok(file)
}

/// Reads a run that was put aside.
struct Run(BufReader<File>);

impl Iterator for Run {
    type Item = std::io::Result<IdAt>;

    fn next(&mut self) -> Option<Self::Item> {
        let mut bytes = [[0; 8]; 2];
        match self.0.read_exact(bytes.as_flattened_mut()) {
            Ok(()) => {}
            Err(error) if error.kind() == std::io::ErrorKind::UnexpectedEof => return None,
            Err(error) => return Some(Err(error)),
        }
        let [id, line] = bytes.map(u64::from_le_bytes);
        Some(Ok((id, line)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn repeated_ids_are_found_in_memory_and_in_runs() {
        for kept in [false, true] {
            let mut ids = SameIds::default();
            for line in 2..5000_u64 {
                // Every thousandth row has the id of line 2.
                let id = if line % 1000 == 0 { 2 } else { line };
                ids.add(&[(id_hash(&id.to_string(), ""), line)]).unwrap();
                if kept && line % 777 == 0 {
                    ids.put_aside().unwrap();
                }
            }
            let found = ids.repeated().unwrap();
            assert_eq!(found.count, 4);
            assert_eq!(
                found.lines,
                [(1000, 2), (2000, 1000), (3000, 2000), (4000, 3000)]
            );
        }
    }

    #[test]
    fn an_opening_makes_another_row() {
        assert_ne!(id_hash("B1", "door"), id_hash("B1", "gate"));
    }
}
