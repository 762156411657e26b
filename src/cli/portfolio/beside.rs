//! Files that are written beside the result: rejected rows and summaries.

use std::io::{Read as _, Write as _};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use sillmark::portfolio::rejects_header;

use crate::cli::arguments::PortfolioOptions;
use crate::cli::failure::Failure;
use crate::cli::output::{check_path, land};

/// Checks everything that is to be written before the run begins: each path can be, none is
/// read by the run, and none is written twice.
pub(super) fn check_all(options: &PortfolioOptions, inputs: &[PathBuf]) -> Result<(), Failure> {
    let output = options.output.iter().map(|path| ("--output", path));
    let rejects = options.rejects.iter().map(|path| ("--rejects", path));
    let summaries = options.summary.iter().map(|path| ("--summary", path));
    let mut before: Vec<(&str, PathBuf)> = Vec::new();
    for (option, path) in output.chain(rejects).chain(summaries) {
        check_path(option, path, inputs)?;
        let place = place(path);
        if let Some((other, _)) = before.iter().find(|(_, known)| *known == place) {
            return Err(Failure::input(format!(
                "option {option}: {:?} is also written by option {other}; accepted: the path of \
                 another file",
                path.display().to_string()
            )));
        }
        before.push((option, place));
    }
    Ok(())
}

/// A path in one form, whether the file is there or not.
fn place(path: &Path) -> PathBuf {
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let folder = folder.canonicalize().unwrap_or_else(|_| folder.to_owned());
    folder.join(path.file_name().unwrap_or_default())
}

/// A file of rejected rows that appears under its name when it is whole.
pub(super) struct RejectsFile {
    temporary: NamedTempFile,
    path: PathBuf,
}

impl RejectsFile {
    pub(super) fn begin(path: &Path) -> Result<Self, Failure> {
        Ok(Self {
            temporary: check_path("--rejects", path, &[])?,
            path: path.to_owned(),
        })
    }

    pub(super) fn write(&mut self, lines: &[u8]) -> std::io::Result<()> {
        self.temporary.write_all(lines)
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    pub(super) fn land(self) -> Result<PathBuf, Failure> {
        land(self.temporary, &self.path)?;
        Ok(self.path)
    }

    /// Removes the rejects of an earlier run with the same result: they are not of this one. A
    /// file that does not begin like ours stays.
    pub(super) fn remove_stale(path: &Path) -> Result<(), Failure> {
        let failed = |error: std::io::Error| Failure::other(format!("{}: {error}", path.display()));
        let Ok(mut file) = std::fs::File::open(path) else {
            return Ok(());
        };
        let mut start = vec![0; rejects_header().len()];
        if file.read_exact(&mut start).is_ok() && start == rejects_header().as_bytes() {
            std::fs::remove_file(path).map_err(failed)?;
        }
        Ok(())
    }

    /// Takes over the rows of another file.
    pub(super) fn copy(from: &Path, path: &Path) -> Result<PathBuf, Failure> {
        let mut file = Self::begin(path)?;
        let failed = |error: std::io::Error| Failure::other(format!("{}: {error}", path.display()));
        let mut rows = std::fs::File::open(from).map_err(failed)?;
        std::io::copy(&mut rows, &mut file.temporary).map_err(failed)?;
        file.land()
    }
}
