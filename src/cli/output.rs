//! Where results go: stdout, or a file that appears whole or not at all.

use std::fs::File;
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use tempfile::{Builder, NamedTempFile};

use super::failure::Failure;

/// The target of a result, opened before the work begins so that a bad path fails at once.
pub(super) enum Target {
    Stdout,
    File {
        temporary: NamedTempFile,
        path: PathBuf,
    },
}

impl Target {
    /// Opens the target: `None` is stdout. `inputs` are the files that the run reads: none of
    /// them is written over.
    pub(super) fn open(path: Option<&Path>, inputs: &[PathBuf]) -> Result<Self, Failure> {
        let Some(path) = path else {
            return Ok(Self::Stdout);
        };
        let temporary = check_path("--output", path, inputs)?;
        Ok(Self::File {
            temporary,
            path: path.to_owned(),
        })
    }

    /// Writes the whole result.
    pub(super) fn write(self, text: &str) -> Result<(), Failure> {
        match self {
            Self::Stdout => {
                let mut stdout = std::io::stdout().lock();
                stdout
                    .write_all(text.as_bytes())
                    .and_then(|()| stdout.flush())
                    .map_err(|error| match error.kind() {
                        ErrorKind::BrokenPipe => Failure::BrokenPipe,
                        _ => Failure::other(format!("stdout: {error}")),
                    })
            }
            Self::File {
                mut temporary,
                path,
            } => {
                let failed = |error| not_written(&path, &error);
                temporary.write_all(text.as_bytes()).map_err(failed)?;
                land(temporary, &path)
            }
        }
    }
}

impl Target {
    /// Refuses stdout for a result that is no text.
    pub(super) fn require_file(&self, ending: &str) -> Result<(), Failure> {
        match self {
            Self::Stdout => Err(no_file(ending)),
            Self::File { .. } => Ok(()),
        }
    }

    /// Lets `write` make the whole result as a file of a name that ends in `.ENDING`, beside
    /// where it is to stand.
    pub(super) fn fill(
        self,
        ending: &str,
        write: impl FnOnce(&Path) -> Result<(), Failure>,
    ) -> Result<(), Failure> {
        let Self::File { path, .. } = self else {
            return Err(no_file(ending));
        };
        let failed = |error| not_written(&path, &error);
        let folder = Builder::new()
            .tempdir_in(folder_of(&path))
            .map_err(failed)?;
        let whole = folder.path().join(format!("result.{ending}"));
        write(&whole)?;
        let synced = File::open(&whole).and_then(|file| file.sync_all());
        synced.map_err(failed)?;
        std::fs::rename(&whole, &path).map_err(failed)
    }
}

fn no_file(ending: &str) -> Failure {
    Failure::input(format!(
        "option --output: it is missing; accepted: the path of a file, such as site.{ending}, since the result is no text"
    ))
}

/// The folder that a file stands in.
fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// Puts a file on the disk and gives it its name.
pub(super) fn land(temporary: NamedTempFile, path: &Path) -> Result<(), Failure> {
    let synced = temporary.as_file().sync_all();
    synced.map_err(|error| not_written(path, &error))?;
    let named = temporary.persist(path);
    named.map_err(|error| not_written(path, &error.error))?;
    Ok(())
}

fn not_written(path: &Path, error: &std::io::Error) -> Failure {
    Failure::other(format!("{}: {error}", path.display()))
}

/// Checks that the file of an option can be written, and makes a temporary file beside it.
pub(super) fn check_path(
    option: &str,
    path: &Path,
    inputs: &[PathBuf],
) -> Result<NamedTempFile, Failure> {
    let refused = |problem: &str, accepted: &str| {
        Failure::input(format!(
            "option {option}: {:?} {problem}; accepted: {accepted}",
            path.display().to_string()
        ))
    };
    if path.is_dir() {
        return Err(refused("is a folder", "the path of a file"));
    }
    // A device or a pipe would be replaced by a file of its name.
    if path.exists() && !path.is_file() {
        return Err(refused(
            "is not a regular file",
            "the path of a file, or no --output for stdout",
        ));
    }
    if inputs.iter().any(|input| is_same(input, path)) {
        return Err(refused(
            "is read by this run and would be written over",
            "the path of another file",
        ));
    }
    temporary_in(folder_of(path)).map_err(|error| match error.kind() {
        ErrorKind::NotFound => refused("lies in a folder that does not exist", WRITABLE),
        ErrorKind::NotADirectory => refused("lies in something that is not a folder", WRITABLE),
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
            refused("lies in a folder that you may not write to", WRITABLE)
        }
        _ => Failure::other(format!(
            "option {option}: {:?}: no file can be made in its folder: {error}",
            path.display().to_string()
        )),
    })
}

const WRITABLE: &str = "the path of a file in a folder that exists and can be written to";

/// Whether two paths lead to one file that is there.
fn is_same(one: &Path, two: &Path) -> bool {
    match (one.canonicalize(), two.canonicalize()) {
        (Ok(one), Ok(two)) => one == two,
        _ => false,
    }
}

/// A temporary file is usually readable by its owner alone; a result is a file like any other,
/// with the permissions that the user's mask leaves.
#[cfg(unix)]
fn temporary_in(folder: &Path) -> std::io::Result<NamedTempFile> {
    use std::os::unix::fs::PermissionsExt as _;
    Builder::new()
        .permissions(std::fs::Permissions::from_mode(0o666))
        .tempfile_in(folder)
}

#[cfg(not(unix))]
fn temporary_in(folder: &Path) -> std::io::Result<NamedTempFile> {
    Builder::new().tempfile_in(folder)
}
