//! Terrain of web servers, as files.

use std::path::{Path, PathBuf};

use sillmark::collect::{About, CollectTerrainError, CollectedTerrain, terrain};
use sillmark::service::Address;
use sillmark::statement::{Place, Stated};
use sillmark::terrain::DemStatement;

use super::Origin;
use super::access::{self, Access};
use crate::cli::failure::{Failure, say_on_terminal};

/// Terrain models, all of them files.
pub(in crate::cli) struct BroughtTerrain {
    pub(in crate::cli) files: Vec<PathBuf>,
    pub(in crate::cli) origins: Vec<Origin>,
}

/// Puts the part about some places in the stead of each address. A model that none of them lies
/// in is left out, where another holds one.
pub(in crate::cli) fn bring(
    dems: &[PathBuf],
    access: &Access,
    statement: &DemStatement,
    about: &About<'_>,
    folder: &Path,
) -> Result<BroughtTerrain, Failure> {
    let mut brought = BroughtTerrain {
        files: Vec::new(),
        origins: Vec::new(),
    };
    let mut beyond = None;
    for (number, path) in dems.iter().enumerate() {
        let text = path.to_string_lossy();
        if !Address::is_meant(&text) {
            brought.files.push(path.clone());
            continue;
        }
        let stated = Stated::new("address", text, Place::Option("option --dem".into()));
        let address = Address::read(&stated).map_err(Failure::input)?;
        let connection = access.to(&address)?;
        say_on_terminal(&format!("asking {address} ..."));
        // A folder each, so that two files of one name do not meet.
        let folder = folder.join(format!("terrain-{}", number + 1));
        std::fs::create_dir(&folder).map_err(Failure::other)?;
        let collected = terrain(&connection, &address, statement, about, &folder);
        let collected = collected.map_err(failure)?;
        match &collected.file {
            Some(file) => {
                brought.origins.push(origin(file, &collected));
                brought.files.push(file.clone());
            }
            None => beyond = beyond.or(collected.beyond),
        }
    }
    match beyond {
        Some(beyond) if brought.files.is_empty() => Err(failure(beyond)),
        _ => Ok(brought),
    }
}

fn origin(file: &Path, collected: &CollectedTerrain) -> Origin {
    Origin {
        path: file.to_owned(),
        from: collected.address.clone(),
        told: format!("{}, the part about the places", collected.fetched),
        content: collected.edition.clone(),
    }
}

/// Whose fault it is that no terrain was brought.
fn failure(error: CollectTerrainError) -> Failure {
    match error {
        CollectTerrainError::Service(error) => access::failure(error),
        CollectTerrainError::Disk { .. } => Failure::other(error),
        CollectTerrainError::NoGeoTiff { .. }
        | CollectTerrainError::TooMuch { .. }
        | CollectTerrainError::Terrain { .. } => Failure::input(error),
    }
}
