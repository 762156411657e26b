//! Where grids are looked for.

use std::env;
use std::path::{Path, PathBuf};

use super::DatumError;

/// The environment variable that names grid folders, separated as in `PATH`.
pub const GRIDS_VARIABLE: &str = "SILLMARK_GRIDS";

/// PROJ's own variables: where it keeps its downloads, and its search path by its new and old
/// name.
const PROJ_VARIABLES: [&str; 3] = ["PROJ_USER_WRITABLE_DIRECTORY", "PROJ_DATA", "PROJ_LIB"];

/// The folders to search: those given, else those of `SILLMARK_GRIDS`, else PROJ's own.
///
/// What the user names must be there; what PROJ looks at by itself need not.
///
/// # Errors
/// [`DatumError::Folder`] naming the first folder that is not one.
pub(super) fn grid_folders(given: &[PathBuf]) -> Result<Vec<PathBuf>, DatumError> {
    if !given.is_empty() {
        return checked(given.to_vec(), "--grids");
    }
    let named: Vec<PathBuf> = folders_of(GRIDS_VARIABLE);
    if !named.is_empty() {
        return checked(named, GRIDS_VARIABLE);
    }
    let mut found: Vec<PathBuf> = Vec::new();
    for folder in PROJ_VARIABLES.into_iter().flat_map(folders_of) {
        if folder.is_dir() && !found.contains(&folder) {
            found.push(folder);
        }
    }
    Ok(found)
}

fn folders_of(variable: &str) -> Vec<PathBuf> {
    env::var_os(variable).map_or_else(Vec::new, |paths| {
        env::split_paths(&paths)
            .filter(|path| !path.as_os_str().is_empty())
            .collect()
    })
}

fn checked(folders: Vec<PathBuf>, named_by: &'static str) -> Result<Vec<PathBuf>, DatumError> {
    match folders.iter().find(|folder| !is_readable(folder)) {
        None => Ok(folders),
        Some(path) => Err(DatumError::Folder {
            named_by,
            path: path.clone(),
        }),
    }
}

fn is_readable(folder: &Path) -> bool {
    folder.read_dir().is_ok()
}
