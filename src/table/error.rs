//! What can go wrong with a table as a whole.

use std::path::{Path, PathBuf};

use super::RecordFault;
use crate::crs::CrsError;
use crate::gis::GisError;

/// A table that cannot be read, or not be written.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TableError {
    /// An ending that stands for no format.
    #[error(
        "{}: the format of a table is not known from the ending {ending:?}; accepted: {accepted}",
        path.display()
    )]
    UnknownFormat {
        /// The path as it was given.
        path: PathBuf,
        /// Its ending.
        ending: String,
        /// Endings that stand for a format.
        accepted: String,
    },
    /// A part of a table that is not as it must be.
    #[error("{}: {subject}: {found}; accepted: {accepted}", path.display())]
    Refused {
        /// The path as it was given.
        path: PathBuf,
        /// The part: header, layer, column, position, compression.
        subject: String,
        /// What is there.
        found: String,
        /// What would be accepted.
        accepted: String,
    },
    /// A row that cannot be taken over into another format.
    #[error("{}, {fault}", path.display())]
    Row {
        /// The file it was read from.
        path: PathBuf,
        /// What is wrong with it.
        fault: Box<RecordFault>,
    },
    /// The operating system refused: no such file, no right, no space.
    #[error("{}: {action} failed: {reason}", path.display())]
    System {
        /// The path as it was given.
        path: PathBuf,
        /// What was tried.
        action: &'static str,
        /// What the system says.
        reason: String,
    },
    /// A library could not write the file, or not read what it wrote.
    #[error("{}: cannot be written: {reason}", path.display())]
    NotWritten {
        /// The file that was to be written.
        path: PathBuf,
        /// What the library says.
        reason: String,
    },
    /// A layer that could not be opened or read.
    #[error(transparent)]
    Gis(#[from] GisError),
    /// A coordinate reference system that cannot be used.
    #[error("{}: {error}", path.display())]
    Crs {
        /// The path as it was given.
        path: PathBuf,
        /// What is wrong with it.
        error: CrsError,
    },
}

impl TableError {
    pub(super) fn row(path: &Path, fault: RecordFault) -> Self {
        Self::Row {
            path: path.to_owned(),
            fault: Box::new(fault),
        }
    }

    pub(super) fn system(
        path: &Path,
        action: &'static str,
    ) -> impl Fn(std::io::Error) -> Self + use<> {
        let path = path.to_owned();
        move |error| Self::System {
            path: path.clone(),
            action,
            reason: error.to_string(),
        }
    }

    pub(super) fn refused(
        path: &Path,
        subject: impl Into<String>,
        found: impl Into<String>,
        accepted: impl Into<String>,
    ) -> Self {
        Self::Refused {
            path: path.to_owned(),
            subject: subject.into(),
            found: found.into(),
            accepted: accepted.into(),
        }
    }
}
