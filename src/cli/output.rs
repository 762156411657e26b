//! Where results go: stdout, or a file that appears whole or not at all.

use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

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
    /// Opens the target: `None` is stdout.
    pub(super) fn open(path: Option<&Path>) -> Result<Self, Failure> {
        let Some(path) = path else {
            return Ok(Self::Stdout);
        };
        if path.is_dir() {
            return Err(Failure::input(format!(
                "option --output: {} is a folder; accepted: the path of a file",
                path.display()
            )));
        }
        let folder = match path.parent() {
            Some(folder) if !folder.as_os_str().is_empty() => folder,
            _ => Path::new("."),
        };
        let temporary = NamedTempFile::new_in(folder).map_err(|error| {
            let message = format!(
                "option --output: {}: no file can be made in {}: {error}",
                path.display(),
                folder.display()
            );
            if error.kind() == ErrorKind::NotFound {
                Failure::input(message)
            } else {
                Failure::other(message)
            }
        })?;
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
                let failed =
                    |error: std::io::Error| Failure::other(format!("{}: {error}", path.display()));
                temporary.write_all(text.as_bytes()).map_err(failed)?;
                temporary.as_file().sync_all().map_err(failed)?;
                give_usual_permissions(&temporary).map_err(failed)?;
                temporary
                    .persist(&path)
                    .map_err(|error| failed(error.error))?;
                Ok(())
            }
        }
    }
}

/// A temporary file is readable by its owner alone; a result is a file like any other.
#[cfg(unix)]
fn give_usual_permissions(file: &NamedTempFile) -> std::io::Result<()> {
    use std::os::unix::fs::PermissionsExt as _;
    file.as_file()
        .set_permissions(std::fs::Permissions::from_mode(0o644))
}

#[cfg(not(unix))]
fn give_usual_permissions(_: &NamedTempFile) -> std::io::Result<()> {
    Ok(())
}
