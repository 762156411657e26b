//! Why no terrain is collected.

use std::io;
use std::path::{Path, PathBuf};

use thiserror::Error;

use crate::service::ServiceError;
use crate::terrain::TerrainError;

/// Why no part of a served terrain model is collected; addresses are shown without their keys.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum CollectTerrainError {
    /// The server does not give what is asked for.
    #[error(transparent)]
    Service(#[from] ServiceError),
    /// The file is no TIFF, or does not hang together.
    #[error("{address}: {problem}; accepted: a GeoTIFF of one band")]
    NoGeoTiff {
        /// The address.
        address: String,
        /// What is wrong with it.
        problem: String,
    },
    /// A part would be too large.
    #[error("{address}: {problem}; accepted: download the file and name it by its path")]
    TooMuch {
        /// The address.
        address: String,
        /// What is too large.
        problem: String,
    },
    /// What stands in the file cannot be used as terrain, or does not reach a place.
    #[error("{address}: {problem}")]
    Terrain {
        /// The address.
        address: String,
        /// As for a file on the disk.
        problem: String,
    },
    /// The part cannot be written.
    #[error("{}: cannot be written: {problem}", path.display())]
    Disk {
        /// The file or folder.
        path: PathBuf,
        /// Why.
        problem: String,
    },
}

/// The errors of one address.
#[derive(Clone, Debug)]
pub(super) struct Refusals {
    pub(super) address: String,
}

impl Refusals {
    pub(super) fn damaged(&self, problem: impl Into<String>) -> CollectTerrainError {
        CollectTerrainError::NoGeoTiff {
            address: self.address.clone(),
            problem: problem.into(),
        }
    }

    pub(super) fn too_much(&self, problem: impl Into<String>) -> CollectTerrainError {
        CollectTerrainError::TooMuch {
            address: self.address.clone(),
            problem: problem.into(),
        }
    }

    /// An error of the file that stands for the served one: it names the address instead.
    pub(super) fn terrain(&self, error: &TerrainError, stand_in: &Path) -> CollectTerrainError {
        let mut text = error.to_string();
        let name = stand_in.file_name().map(|name| name.to_string_lossy());
        for named in [Some(stand_in.to_string_lossy()), name]
            .into_iter()
            .flatten()
        {
            text = text.replace(&*named, &self.address);
        }
        let first = format!("{}: ", self.address);
        CollectTerrainError::Terrain {
            address: self.address.clone(),
            problem: text.strip_prefix(&first).unwrap_or(&text).to_owned(),
        }
    }
}

pub(super) fn disk(path: &Path) -> impl Fn(io::Error) -> CollectTerrainError {
    let path = path.to_owned();
    move |error| CollectTerrainError::Disk {
        path: path.clone(),
        problem: error.to_string(),
    }
}
