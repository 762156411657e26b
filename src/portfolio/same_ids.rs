//! Rows that have the same id.
//!
//! Ids are kept as hashes of 64 bits with their lines, dealt to lots by the first bits of the
//! hash: those that are the same are in one lot, and each lot is small enough to be sorted by
//! itself. A quarter of a million ids at a time are put aside in a temporary file, so that
//! memory does not grow with the table. Two different ids among ten million share a hash with
//! a chance of three in a million.

use std::fs::File;
use std::hash::BuildHasher as _;
use std::io::{BufWriter, Read, Seek, Write};
use std::ops::Range;
use std::thread::JoinHandle;

use foldhash::quality::FixedState;

/// Hash of an id and the line that it stands in.
pub type IdAt = (u64, u64);

/// Gathers ids to find those that stand twice.
#[derive(Debug, Default)]
pub struct SameIds {
    fresh: Vec<IdAt>,
    aside: Vec<Aside>,
}

/// Ids that are kept in memory: 4 MiB of them.
const KEPT: usize = 1 << 18;

/// Lots, a power of two: of ten million rows one is of ten thousand.
const LOTS: usize = 1 << 10;

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

    /// Writes down what was gathered.
    fn put_aside(&mut self) -> std::io::Result<()> {
        let ends = deal(&mut self.fresh);
        let aside = Aside::write(&self.fresh, ends, tempfile::tempfile()?)?;
        self.aside.push(aside);
        self.fresh.clear();
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
        let ends = deal(&mut self.fresh);
        let mut found = Repeated::default();
        let mut ids = Vec::new();
        for lot in 0..LOTS {
            ids.clear();
            // In the order of the table.
            for aside in &mut self.aside {
                aside.read_next(lot, &mut ids)?;
                if ids.len() > KEPT {
                    found.look_among(&mut ids);
                }
            }
            ids.extend_from_slice(self.fresh.get(range_of(lot, &ends)).unwrap_or_default());
            found.look_among(&mut ids);
        }
        found.keep_first();
        Ok(found)
    }
}

impl Repeated {
    /// Looks for those that are the same, and leaves the last of them.
    fn look_among(&mut self, ids: &mut Vec<IdAt>) {
        ids.sort_unstable();
        ids.dedup_by(|next, before| {
            let is_same = next.0 == before.0;
            if is_same {
                self.add(next.1, before.1);
                *before = *next;
            }
            is_same
        });
    }

    fn add(&mut self, line: u64, before: u64) {
        self.count += 1;
        self.lines.push((line, before));
        if self.lines.len() > 1000 * NAMED {
            self.keep_first();
        }
    }

    fn keep_first(&mut self) {
        self.lines.sort_unstable();
        self.lines.truncate(NAMED);
    }
}

/// Puts ids in the order of their lots, and says where each lot ends.
fn deal(ids: &mut [IdAt]) -> Vec<usize> {
    ids.sort_unstable_by_key(|(hash, _)| lot_of(*hash));
    let end = |lot| ids.partition_point(|(hash, _)| lot_of(*hash) <= lot);
    (0..LOTS).map(end).collect()
}

fn lot_of(hash: u64) -> usize {
    // The first bits; what is left of them is less than the number of lots.
    usize::try_from(hash >> (u64::BITS - LOTS.ilog2())).unwrap_or_default()
}

/// Where a lot stands: from the end of the one before to its own.
fn range_of(lot: usize, ends: &[usize]) -> Range<usize> {
    let end = |lot: usize| ends.get(lot).copied().unwrap_or_default();
    lot.checked_sub(1).map_or(0, end)..end(lot)
}

/// Dealt ids in a file, which is read lot after lot.
#[derive(Debug)]
struct Aside {
    file: File,
    ends: Vec<usize>,
}

/// Bytes of an id in a file.
const ID_BYTES: usize = 2 * size_of::<u64>();

impl Aside {
    fn write(ids: &[IdAt], ends: Vec<usize>, file: File) -> std::io::Result<Self> {
        let mut file = BufWriter::new(file);
        for (hash, line) in ids {
            file.write_all([hash.to_le_bytes(), line.to_le_bytes()].as_flattened())?;
        }
        let mut file = file
            .into_inner()
            .map_err(std::io::IntoInnerError::into_error)?;
        file.rewind()?;
        Ok(Self { file, ends })
    }

    /// Reads a lot, after all before it.
    fn read_next(&mut self, lot: usize, ids: &mut Vec<IdAt>) -> std::io::Result<()> {
        let count = range_of(lot, &self.ends).len();
        let mut bytes = vec![0; count * ID_BYTES];
        self.file.read_exact(&mut bytes)?;
        let (numbers, _) = bytes.as_chunks();
        let (pairs, _) = numbers.as_chunks();
        ids.extend(
            pairs
                .iter()
                .map(|[hash, line]| (u64::from_le_bytes(*hash), u64::from_le_bytes(*line))),
        );
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn repeated_ids_are_found_in_memory_and_in_files() {
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
    fn ids_are_found_wherever_their_hashes_lie() {
        let hashes = (0..=u64::from(u16::MAX)).map(|part| part << 48 | 7);
        for aside in [false, true] {
            let mut ids = SameIds::default();
            for (line, hash) in (2..).zip(hashes.clone().chain([7, u64::MAX << 48 | 7])) {
                ids.add(&[(hash, line)]).unwrap();
            }
            if aside {
                ids.put_aside().unwrap();
            }
            let found = ids.repeated().unwrap();
            assert_eq!(found.lines, [(65_538, 2), (65_539, 65_537)]);
        }
    }

    #[test]
    fn where_all_are_the_same_only_the_first_lines_are_named() {
        let mut ids = SameIds::default();
        let count = 3 * KEPT as u64;
        for line in 2..count {
            ids.add(&[(1, line)]).unwrap();
        }
        let found = ids.repeated().unwrap();
        assert_eq!(found.count, count - 3);
        let first: Vec<_> = (3..).zip(2..).take(NAMED).collect();
        assert_eq!(found.lines, first);
    }

    #[test]
    fn an_opening_makes_another_row() {
        assert_ne!(id_hash("B1", "door"), id_hash("B1", "gate"));
    }
}
