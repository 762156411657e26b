//! A run that is not at its end: its rows so far, and how to go on.
//!
//! Beside the result stands a folder with the rows and rejects written so far and a journal
//! that says how many bytes of them count, where the input goes on, and what was counted. The
//! journal is replaced as a whole after the rows that it counts are written: whenever the run
//! is killed, what lies beyond the journal is cut off and done again.

use std::collections::BTreeMap;
use std::fs::{self, File, OpenOptions};
use std::io::{Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use serde::{Deserialize, Serialize};

use super::same_ids::SameIds;
use super::summary::Summary;
use super::{Answers, RowFault, RunError, Sink};
use crate::table::{Position, csv_text};

/// What a result depends on beside the program: options and files, each with a value that
/// changes when it does.
pub type Fingerprint = BTreeMap<String, String>;

/// The folder of a run that is not at its end.
pub struct Unfinished {
    folder: PathBuf,
    rows: File,
    rejects: File,
    journal: Journal,
    written: Instant,
    max_rejects: Option<u64>,
    ids: SameIds,
}

#[derive(Debug, Default, Serialize, Deserialize)]
struct Journal {
    fingerprint: Fingerprint,
    /// Where the input goes on; `None` before its first row.
    position: Option<Position>,
    rows_bytes: u64,
    rejects_bytes: u64,
    summary: Summary,
}

/// The journal is written no more often.
const PAUSE: Duration = Duration::from_millis(100);

/// The columns of the rejects.
const REJECTS: &str = "line,id,field,value,problem,accepted\n";

impl Unfinished {
    /// The folder beside a result.
    #[must_use]
    pub fn folder(result: &Path) -> PathBuf {
        let mut name = result.file_name().unwrap_or_default().to_owned();
        name.push(".unfinished");
        result.with_file_name(name)
    }

    /// Starts a run: `header` is the first line of the result.
    ///
    /// # Errors
    /// [`RunError`] where the folder is there already or cannot be written.
    pub fn start(
        result: &Path,
        header: &str,
        fingerprint: Fingerprint,
        max_rejects: Option<u64>,
    ) -> Result<Self, RunError> {
        let folder = Self::folder(result);
        fs::create_dir(&folder).map_err(file_error(&folder, "creating the folder"))?;
        let begin = || {
            let mut rows = create(&folder.join("rows.csv"))?;
            let mut rejects = create(&folder.join("rejects.csv"))?;
            put(&mut rows, header.as_bytes(), &folder.join("rows.csv"))?;
            put(
                &mut rejects,
                REJECTS.as_bytes(),
                &folder.join("rejects.csv"),
            )?;
            Ok((rows, rejects))
        };
        // Half a folder would stand in the way of the next start.
        let (rows, rejects) = begin().inspect_err(|_: &RunError| {
            let _ = fs::remove_dir_all(&folder);
        })?;
        let mut run = Self {
            folder,
            rows,
            rejects,
            journal: Journal {
                fingerprint,
                rows_bytes: header.len() as u64,
                rejects_bytes: REJECTS.len() as u64,
                ..Journal::default()
            },
            written: Instant::now(),
            max_rejects,
            ids: SameIds::default(),
        };
        run.note().inspect_err(|_| {
            let _ = fs::remove_dir_all(&run.folder);
        })?;
        Ok(run)
    }

    /// Takes up a run where it was left.
    ///
    /// # Errors
    /// [`RunError`] where there is none, where it was another run, or where its files are
    /// shorter than its journal says.
    pub fn resume(
        result: &Path,
        fingerprint: &Fingerprint,
        max_rejects: Option<u64>,
    ) -> Result<Self, RunError> {
        let folder = Self::folder(result);
        let path = folder.join("journal.json");
        let text = fs::read_to_string(&path).map_err(file_error(&path, "reading"))?;
        let journal: Journal = serde_json::from_str(&text).map_err(|error| RunError::Journal {
            path: path.clone(),
            problem: error.to_string(),
        })?;
        if let Some(differs) = difference(&journal.fingerprint, fingerprint) {
            return Err(RunError::OtherRun { folder, differs });
        }
        let rows = cut(&folder.join("rows.csv"), journal.rows_bytes)?;
        let rejects = cut(&folder.join("rejects.csv"), journal.rejects_bytes)?;
        Ok(Self {
            folder,
            rows,
            rejects,
            journal,
            written: Instant::now(),
            max_rejects,
            ids: SameIds::default(),
        })
    }

    /// Where the input goes on; `None` at its start.
    #[must_use]
    pub const fn position(&self) -> Option<Position> {
        self.journal.position
    }

    /// What was counted so far.
    #[must_use]
    pub const fn summary(&self) -> &Summary {
        &self.journal.summary
    }

    /// The rows so far, as CSV.
    #[must_use]
    pub fn rows(&self) -> PathBuf {
        self.folder.join("rows.csv")
    }

    /// The rejected rows so far, as CSV.
    #[must_use]
    pub fn rejects(&self) -> PathBuf {
        self.folder.join("rejects.csv")
    }

    /// Writes the journal, so that the run can be taken up from here.
    ///
    /// # Errors
    /// [`RunError`] where it cannot be written; the journal before it stays.
    pub fn note(&mut self) -> Result<(), RunError> {
        let path = self.folder.join("journal.json");
        let fresh = self.folder.join("journal.new");
        let text = serde_json::to_vec(&self.journal).map_err(|error| RunError::Journal {
            path: path.clone(),
            problem: error.to_string(),
        })?;
        fs::write(&fresh, text).map_err(file_error(&fresh, "writing"))?;
        fs::rename(&fresh, &path).map_err(file_error(&path, "replacing"))?;
        self.written = Instant::now();
        Ok(())
    }

    /// The ids of the rows; of a run that was taken up again those before must be added.
    pub const fn ids(&mut self) -> &mut SameIds {
        &mut self.ids
    }

    /// Makes sure that the rows are on the disk.
    ///
    /// # Errors
    /// [`RunError`] where the disk refuses.
    pub fn sync(&self) -> Result<(), RunError> {
        for (file, path) in [(&self.rows, self.rows()), (&self.rejects, self.rejects())] {
            file.sync_all().map_err(file_error(&path, "saving"))?;
        }
        Ok(())
    }

    /// Removes the folder, once its rows are in the result.
    ///
    /// # Errors
    /// [`RunError`] where it cannot be removed.
    pub fn remove(self) -> Result<(), RunError> {
        let folder = self.folder.clone();
        drop(self);
        fs::remove_dir_all(&folder).map_err(file_error(&folder, "removing"))
    }
}

impl Sink for Unfinished {
    fn take(&mut self, answers: &Answers, end: Position) -> Result<(), RunError> {
        let Answers {
            lines,
            rejects,
            summary,
            ids,
        } = answers;
        let (rows, rejected) = (self.rows(), self.rejects());
        put(&mut self.rows, lines, &rows)?;
        let text = reject_lines(rejects);
        put(&mut self.rejects, &text, &rejected)?;
        self.journal.rows_bytes += lines.len() as u64;
        self.journal.rejects_bytes += text.len() as u64;
        self.journal.position = Some(end);
        self.journal.summary.merge(summary);
        self.ids
            .add(ids)
            .map_err(file_error(&std::env::temp_dir(), "writing"))?;
        if let (Some(allowed), Some(last)) = (self.max_rejects, rejects.last())
            && self.journal.summary.rejected() > allowed
        {
            return Err(RunError::TooManyRejects {
                rejected: self.journal.summary.rejected(),
                allowed,
                fault: Box::new(last.fault.clone()),
            });
        }
        if self.written.elapsed() >= PAUSE {
            self.note()?;
        }
        Ok(())
    }
}

/// The first line of a table of rejected rows.
#[must_use]
pub const fn rejects_header() -> &'static str {
    REJECTS
}

/// Rejected rows as lines of their table.
#[must_use]
pub fn reject_lines(rejects: &[RowFault]) -> Vec<u8> {
    let mut text = Vec::new();
    for RowFault { id, fault } in rejects {
        text.extend_from_slice(fault.line.to_string().as_bytes());
        for part in [
            id,
            &fault.field,
            &fault.value,
            &fault.problem,
            &fault.accepted,
        ] {
            text.push(b',');
            csv_text(&mut text, part);
        }
        text.push(b'\n');
    }
    text
}

/// The first thing in which two runs differ.
fn difference(left: &Fingerprint, right: &Fingerprint) -> Option<String> {
    let names = left.keys().chain(right.keys());
    let mut different = names.filter(|name| left.get(*name) != right.get(*name));
    different.next().cloned()
}

fn create(path: &Path) -> Result<File, RunError> {
    File::create(path).map_err(file_error(path, "creating"))
}

fn put(file: &mut File, bytes: &[u8], path: &Path) -> Result<(), RunError> {
    file.write_all(bytes).map_err(file_error(path, "writing"))
}

/// Opens a file of which `bytes` count and cuts off what lies beyond.
fn cut(path: &Path, bytes: u64) -> Result<File, RunError> {
    let open = || {
        let mut file = OpenOptions::new().write(true).open(path)?;
        let length = file.metadata()?.len();
        if length < bytes {
            let problem = format!("it has {length} bytes, the journal says {bytes}");
            return Err(std::io::Error::other(problem));
        }
        file.set_len(bytes)?;
        file.seek(SeekFrom::End(0))?;
        Ok(file)
    };
    open().map_err(file_error(path, "taking up"))
}

fn file_error(path: &Path, action: &'static str) -> impl Fn(std::io::Error) -> RunError + use<> {
    let path = path.to_owned();
    move |reason| RunError::File {
        path: path.clone(),
        action,
        reason,
    }
}
