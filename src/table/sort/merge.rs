//! Merging sorted runs.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::io;
use std::path::{Path, PathBuf};

use super::run::{Run, RunReader, RunWriter};

/// Runs that are merged at a time: each is an open file with a buffer.
const AT_ONCE: usize = 64;

/// The runs of a table. Where there are many of one level they become one of the next, so that
/// few files are open, and each row is copied once a level.
pub(super) struct Runs {
    folder: PathBuf,
    memory: usize,
    /// Runs of earlier rows are in higher levels, and first within a level.
    levels: Vec<Vec<Run>>,
}

impl Runs {
    pub(super) fn new(folder: &Path, memory: usize) -> Self {
        Self {
            folder: folder.to_owned(),
            memory,
            levels: Vec::new(),
        }
    }

    pub(super) const fn is_empty(&self) -> bool {
        self.levels.is_empty()
    }

    /// Adds the run of the next rows.
    pub(super) fn push(&mut self, mut run: Run) -> io::Result<()> {
        for level in &mut self.levels {
            level.push(run);
            if level.len() < AT_ONCE {
                return Ok(());
            }
            let full = std::mem::take(level);
            run = merged(full, self.memory, &self.folder)?;
        }
        self.levels.push(vec![run]);
        Ok(())
    }

    /// Hands out all rows in their order; of equal keys, the earlier first.
    pub(super) fn each(
        self,
        visit: &mut dyn FnMut(u64, &[u8]) -> io::Result<()>,
    ) -> io::Result<()> {
        let mut rest = Vec::new();
        // The lowest levels are the shortest runs: merged first, they are copied cheaply.
        for level in self.levels {
            let mut runs = level;
            runs.append(&mut rest);
            rest = if runs.len() > AT_ONCE {
                vec![merged(runs, self.memory, &self.folder)?]
            } else {
                runs
            };
        }
        merge(rest, self.memory, visit)
    }
}

fn merged(runs: Vec<Run>, memory: usize, folder: &Path) -> io::Result<Run> {
    let mut whole = RunWriter::new(folder)?;
    merge(runs, memory, &mut |key, row| whole.push(key, row))?;
    whole.finish()
}

fn merge(
    runs: Vec<Run>,
    memory: usize,
    visit: &mut dyn FnMut(u64, &[u8]) -> io::Result<()>,
) -> io::Result<()> {
    let buffer = (memory / runs.len().max(1)).clamp(4096, 1 << 18);
    let mut readers: Vec<RunReader> = runs
        .into_iter()
        .map(|run| RunReader::new(run, buffer))
        .collect();
    let mut heads = BinaryHeap::with_capacity(readers.len());
    for (index, reader) in readers.iter_mut().enumerate() {
        if let Some(key) = reader.advance()? {
            heads.push(Reverse((key, index)));
        }
    }
    while let Some(Reverse((key, index))) = heads.pop() {
        visit(key, &readers[index].row)?;
        if let Some(key) = readers[index].advance()? {
            heads.push(Reverse((key, index)));
        }
    }
    Ok(())
}
