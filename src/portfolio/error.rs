//! What stops a run.

use std::path::PathBuf;

use crate::assess::AssessError;
use crate::table::{RecordFault, TableError};

/// Why a run stopped before its end.
#[derive(Debug, thiserror::Error)]
pub enum RunError {
    /// A map that cannot be read.
    #[error(transparent)]
    Assess(Box<AssessError>),
    /// The input or a result that cannot be read or written.
    #[error(transparent)]
    Table(Box<TableError>),
    /// Maps that a thread cannot open.
    #[error("{0}")]
    Open(Box<dyn std::error::Error + Send + Sync>),
    /// A file that cannot be written.
    #[error("{}: {action} failed: {reason}", path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What was tried.
        action: &'static str,
        /// What the system says.
        reason: std::io::Error,
    },
    /// More rows were rejected than the user allows.
    #[error(
        "rows without an answer: {rejected}, more than the {allowed} of --max-rejects; the last: \
         {fault}"
    )]
    TooManyRejects {
        /// How many so far.
        rejected: u64,
        /// How many are allowed.
        allowed: u64,
        /// What is wrong with the last.
        fault: Box<RecordFault>,
    },
    /// The journal of an unfinished run that cannot be read or written.
    #[error("{}: the journal of the unfinished run: {problem}", path.display())]
    Journal {
        /// The journal.
        path: PathBuf,
        /// What is wrong.
        problem: String,
    },
    /// An unfinished run is in the way.
    #[error("an unfinished run is there, {}; accepted: --resume to continue it, or a fresh start after that folder is removed", folder.display())]
    Unfinished {
        /// Its folder.
        folder: PathBuf,
    },
    /// There is nothing to take up.
    #[error("option --resume: there is no unfinished run of {:?} (it would be in {}); accepted: the same command without --resume", result.display().to_string(), folder.display())]
    NothingToResume {
        /// The result.
        result: PathBuf,
        /// Where the unfinished run would be.
        folder: PathBuf,
    },
    /// Another process writes the same result.
    #[error("{}: another run writes there at this moment; accepted: another --output, or a start after that run has ended", folder.display())]
    UnderWay {
        /// Its folder.
        folder: PathBuf,
    },
    /// The unfinished run is another one.
    #[error("{}: an unfinished run is there, and {differs} has changed since it began; accepted: the same files and options, or a fresh start after the folder is removed", folder.display())]
    OtherRun {
        /// Its folder.
        folder: PathBuf,
        /// What is different.
        differs: String,
    },
    /// Somebody asked for a stop.
    #[error("stopped")]
    Stopped,
    /// A thread ended before its work was done.
    #[error("a thread of this program ended before its work was done")]
    ThreadEnded,
}

impl From<AssessError> for RunError {
    fn from(error: AssessError) -> Self {
        Self::Assess(Box::new(error))
    }
}

impl From<TableError> for RunError {
    fn from(error: TableError) -> Self {
        Self::Table(Box::new(error))
    }
}
