//! A run that is not at its end: its rows so far, and how to go on.
//!
//! Beside the result stands a folder with the rows and rejects written so far and a journal
//! that says how many bytes of them count, where the input goes on, and what was counted. The
//! journal is replaced as a whole after the rows that it counts are written: whenever the run
//! is killed, what lies beyond the journal is cut off and done again.
//!
//! One run at a time has the folder: it holds a lock there. Once the result has its name, first
//! the journal is removed and then the rest: a folder without one is nothing to go on from.

use std::collections::BTreeMap;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{ErrorKind, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use serde::{Deserialize, Serialize};

use super::same_ids::{Repeated, SameIds};
use super::saving::Saving;
use super::summary::Summary;
use super::{Answers, RunError, Sink, reject_lines, rejects_header};
use crate::table::Position;

/// What a result depends on beside the program: options and files, each with a value that
/// changes when it does.
pub type Fingerprint = BTreeMap<String, String>;

/// The folder of a run that is not at its end.
pub struct Unfinished {
    folder: PathBuf,
    /// The files that grow; `None` once all rows are in them.
    files: Option<Files>,
    /// Keeps others away as long as it is open.
    lock: File,
    journal: Journal,
    written: Instant,
    max_rejects: Option<u64>,
    ids: SameIds,
    /// The search among the ids, once there are no more.
    search: Option<Search>,
}

/// A search for repeated ids under way.
type Search = JoinHandle<std::io::Result<Repeated>>;

struct Files {
    rows: File,
    rejects: File,
    /// Of the rows, which are nearly all there is.
    saving: Saving,
}

#[derive(Debug, Default, Serialize, Deserialize)]
struct Journal {
    fingerprint: Fingerprint,
    /// Where the input goes on; `None` before its first row.
    position: Option<Position>,
    rows_bytes: u64,
    rejects_bytes: u64,
    summary: Summary,
    /// Whether all rows are written.
    complete: bool,
}

/// The journal is written no more often.
const PAUSE: Duration = Duration::from_millis(100);

/// The files of the folder.
const JOURNAL: &str = "journal.json";
const ROWS: &str = "rows.csv";
const REJECTED: &str = "rejects.csv";
const LOCK: &str = "lock";

impl Unfinished {
    /// The folder beside a result.
    #[must_use]
    pub fn folder(result: &Path) -> PathBuf {
        let mut name = result.file_name().unwrap_or_default().to_owned();
        name.push(".unfinished");
        result.with_file_name(name)
    }

    /// Whether a run to be taken up is there.
    #[must_use]
    pub fn is_there(result: &Path) -> bool {
        Self::folder(result).join(JOURNAL).exists()
    }

    /// Starts a run: `header` is the first line of the result. A folder without a journal is
    /// what a killed run left before its first row or after its last, and is used again.
    ///
    /// # Errors
    /// [`RunError`] where a run is there already or its folder cannot be written.
    pub fn start(
        result: &Path,
        header: &str,
        fingerprint: Fingerprint,
        max_rejects: Option<u64>,
    ) -> Result<Self, RunError> {
        let folder = Self::folder(result);
        match fs::create_dir(&folder) {
            Err(error) if error.kind() != ErrorKind::AlreadyExists => {
                return Err(file_error(&folder, "creating the folder")(error));
            }
            _ => {}
        }
        let lock = lock(&folder)?;
        if folder.join(JOURNAL).exists() {
            return Err(RunError::Unfinished { folder });
        }
        let begin = || {
            let journal = Journal {
                fingerprint,
                rows_bytes: header.len() as u64,
                rejects_bytes: rejects_header().len() as u64,
                ..Journal::default()
            };
            let files = Files {
                rows: create(&folder.join(ROWS), header)?,
                rejects: create(&folder.join(REJECTED), rejects_header())?,
                saving: Saving::default(),
            };
            let mut run = Self::with(folder.clone(), lock, journal, max_rejects);
            run.files = Some(files);
            run.note()?;
            Ok(run)
        };
        // Half a folder would stand in the way of the next start.
        begin().inspect_err(|_: &RunError| {
            let _ = fs::remove_dir_all(&folder);
        })
    }

    /// Takes up a run where it was left.
    ///
    /// # Errors
    /// [`RunError`] where there is none, where it is under way or was another run, or where
    /// its files are shorter than its journal says.
    pub fn resume(
        result: &Path,
        fingerprint: &Fingerprint,
        max_rejects: Option<u64>,
    ) -> Result<Self, RunError> {
        let folder = Self::folder(result);
        if !Self::is_there(result) {
            let result = result.to_owned();
            return Err(RunError::NothingToResume { result, folder });
        }
        let lock = lock(&folder)?;
        let path = folder.join(JOURNAL);
        let text = fs::read_to_string(&path).map_err(file_error(&path, "reading"))?;
        let journal: Journal = serde_json::from_str(&text).map_err(|error| RunError::Journal {
            path: path.clone(),
            problem: error.to_string(),
        })?;
        if let Some(differs) = difference(&journal.fingerprint, fingerprint) {
            return Err(RunError::OtherRun { folder, differs });
        }
        let mut run = Self::with(folder, lock, journal, max_rejects);
        if !run.journal.complete {
            run.files = Some(Files {
                rows: cut(&run.rows(), run.journal.rows_bytes)?,
                rejects: cut(&run.rejects(), run.journal.rejects_bytes)?,
                saving: Saving::default(),
            });
        }
        Ok(run)
    }

    fn with(folder: PathBuf, lock: File, journal: Journal, max_rejects: Option<u64>) -> Self {
        Self {
            folder,
            files: None,
            lock,
            journal,
            written: Instant::now(),
            max_rejects,
            ids: SameIds::default(),
            search: None,
        }
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
        self.folder.join(ROWS)
    }

    /// The rejected rows so far, as CSV.
    #[must_use]
    pub fn rejects(&self) -> PathBuf {
        self.folder.join(REJECTED)
    }

    /// Writes the journal, so that the run can be taken up from here.
    ///
    /// # Errors
    /// [`RunError`] where it cannot be written; the journal before it stays.
    pub fn note(&mut self) -> Result<(), RunError> {
        let path = self.folder.join(JOURNAL);
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

    /// The search for repeated ids, begun when the last row was taken or else now.
    pub fn search(&mut self) -> JoinHandle<std::io::Result<Repeated>> {
        let begun = self.search.take();
        begun.unwrap_or_else(|| std::mem::take(&mut self.ids).search())
    }

    /// Notes that all rows are written, once they are on the disk.
    ///
    /// # Errors
    /// [`RunError`] where the disk refuses.
    pub fn complete(&mut self) -> Result<(), RunError> {
        let rows = self.rows();
        if let Some(files) = &mut self.files {
            files.saving.wait().map_err(file_error(&rows, "saving"))?;
        }
        if let Some(files) = &self.files {
            for (file, path) in [(&files.rows, self.rows()), (&files.rejects, self.rejects())] {
                file.sync_all().map_err(file_error(&path, "saving"))?;
            }
        }
        self.files = None;
        self.journal.complete = true;
        self.note()
    }

    /// Whether all rows are written.
    #[must_use]
    pub const fn is_complete(&self) -> bool {
        self.journal.complete
    }

    /// Removes the folder, once its rows are in the result.
    ///
    /// # Errors
    /// [`RunError`] where it cannot be removed.
    pub fn remove(self) -> Result<(), RunError> {
        // Without its journal the rest is nothing to go on from.
        let failed = file_error(&self.folder, "removing");
        fs::remove_file(self.folder.join(JOURNAL)).map_err(&failed)?;
        fs::remove_dir_all(&self.folder).map_err(failed)?;
        // Until here nobody else was to begin.
        drop(self.lock);
        Ok(())
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
        let text = reject_lines(rejects);
        let files = self.files.as_mut().ok_or(RunError::ThreadEnded)?;
        put(&mut files.rows, lines, &rows)?;
        put(&mut files.rejects, &text, &rejected)?;
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
            let saved = files.saving.go_on(&files.rows);
            saved.map_err(file_error(&rows, "saving"))?;
            self.note()?;
        }
        Ok(())
    }

    fn end(&mut self) -> Result<(), RunError> {
        self.search = Some(self.search());
        let rows = self.rows();
        match &mut self.files {
            Some(files) => files
                .saving
                .go_on(&files.rows)
                .map_err(file_error(&rows, "saving")),
            None => Ok(()),
        }
    }
}

/// The first thing in which two runs differ.
fn difference(left: &Fingerprint, right: &Fingerprint) -> Option<String> {
    let names = left.keys().chain(right.keys());
    let mut different = names.filter(|name| left.get(*name) != right.get(*name));
    different.next().cloned()
}

/// Takes the lock of a folder. Where the file system knows no locks the run goes on without.
fn lock(folder: &Path) -> Result<File, RunError> {
    let path = folder.join(LOCK);
    let lock = File::create(&path).map_err(file_error(&path, "creating"))?;
    match lock.try_lock() {
        Err(TryLockError::WouldBlock) => Err(RunError::UnderWay {
            folder: folder.to_owned(),
        }),
        Ok(()) | Err(TryLockError::Error(_)) => Ok(lock),
    }
}

/// A file with its first line.
fn create(path: &Path, first: &str) -> Result<File, RunError> {
    let mut file = File::create(path).map_err(file_error(path, "creating"))?;
    put(&mut file, first.as_bytes(), path)?;
    Ok(file)
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
