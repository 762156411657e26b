//! A file that appears under its name whole or not at all.

use std::fs::{self, File};
use std::path::{Path, PathBuf};

use tempfile::TempDir;

use crate::table::TableError;

/// A file on its way to its final name.
///
/// It lies in a folder of its own beside the target, so that what a library writes beside it
/// (a journal) goes away with it.
pub(in crate::table) struct Landing {
    folder: TempDir,
    path: PathBuf,
    target: PathBuf,
}

impl Landing {
    /// Makes room beside `target`, which may not be the file that is read from.
    pub(in crate::table) fn new(source: &Path, target: &Path) -> Result<Self, TableError> {
        let same = |path: &Path| fs::canonicalize(path).ok();
        if same(target).is_some_and(|target| Some(target) == same(source)) {
            let found = "it is the file that is read from";
            return Err(TableError::refused(target, "output", found, "another file"));
        }
        if target.is_dir() {
            return Err(TableError::refused(
                target,
                "output",
                "it is a folder",
                "a file",
            ));
        }
        let name = target.file_name().ok_or_else(|| {
            TableError::refused(
                target,
                "output",
                "it has no file name",
                "the path of a file",
            )
        })?;
        let beside = match target.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent,
            _ => Path::new("."),
        };
        let folder = tempfile::Builder::new()
            .prefix(".table-")
            .tempdir_in(beside)
            .map_err(TableError::system(target, "writing beside it"))?;
        Ok(Self {
            path: folder.path().join(name),
            folder,
            target: target.to_owned(),
        })
    }

    /// Where to write.
    pub(in crate::table) fn path(&self) -> &Path {
        &self.path
    }

    /// A folder for temporary files.
    pub(in crate::table) fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Writes the bytes of another file.
    pub(in crate::table) fn copy(&self, source: &Path) -> Result<(), TableError> {
        fs::copy(source, &self.path)
            .map(drop)
            .map_err(TableError::system(&self.target, "writing"))
    }

    /// Puts what was written on the disk and gives it its name.
    pub(in crate::table) fn land(self) -> Result<(), TableError> {
        let failed = TableError::system(&self.target, "writing");
        File::open(&self.path)
            .and_then(|file| file.sync_all())
            .and_then(|()| fs::rename(&self.path, &self.target))
            .map_err(&failed)?;
        // A folder that cannot be removed is no reason to call the file unwritten.
        if let Err(error) = self.folder.close() {
            tracing::warn!(%error, "a temporary folder stays beside the output");
        }
        Ok(())
    }
}
