//! Answers kept on the disk.

use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::time::Duration;

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use tempfile::{NamedTempFile, TempPath};

use super::secret::{Secrets, hidden, restored};
use super::{Request, Validators};

/// A folder of answers, each by its request.
///
/// An entry is one file: a line of JSON with the SHA-256 of what follows, a line of JSON that says
/// what the answer is, then the answer. Secrets of the request that a server repeats in its
/// answer are not among it: they come from the request again. The file is written under another
/// name and renamed, so that what is read is whole whoever writes at the same time; what does not
/// fit its checksum all the same is no entry.
#[derive(Clone, Debug)]
pub struct Cache {
    folder: PathBuf,
}

/// An answer that is at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Where it comes from when redirects were followed, without keys.
    pub address: String,
    /// When it was fetched, or last confirmed, as HTTP writes a date (RFC 9110, section 5.6.7).
    pub date: String,
    /// How the server knows it again.
    pub validators: Validators,
    /// Its kind, as the server says.
    pub content_type: Option<String>,
    /// Its coordinate reference system, as the server says in `Content-Crs`.
    pub content_crs: Option<String>,
    /// The answer.
    pub bytes: Vec<u8>,
}

/// What stands before all else.
#[derive(Serialize, Deserialize)]
struct Seal {
    sha256: String,
    /// The number of the placeholders for secrets.
    mark: u64,
}

#[derive(Serialize, Deserialize)]
struct Head {
    address: String,
    date: String,
    etag: Option<String>,
    last_modified: Option<String>,
    content_type: Option<String>,
    content_crs: Option<String>,
}

impl Cache {
    /// A cache in a folder, which is made where it is missing. What unfinished runs left there
    /// more than a day ago is deleted.
    ///
    /// # Errors
    /// [`io::Error`] where it cannot be made, or no file can be made in it.
    pub fn open(folder: &Path) -> io::Result<Self> {
        fs::create_dir_all(folder)?;
        NamedTempFile::new_in(folder)?.close()?;
        sweep(folder);
        Ok(Self {
            folder: folder.to_owned(),
        })
    }

    /// The answer to a request; `None` where there is none, or one that is damaged.
    #[must_use]
    pub fn find(&self, request: &Request) -> Option<Entry> {
        let file = fs::read(self.path(request)).ok()?;
        let (seal, stored) = line_and_rest(&file)?;
        let seal: Seal = serde_json::from_slice(seal).ok()?;
        if seal.sha256 != checksum(stored) {
            return None;
        }
        let bytes = restored(&Secrets::of_request(request), stored, seal.mark)?;
        let (head, answer) = line_and_rest(&bytes)?;
        let head: Head = serde_json::from_slice(head).ok()?;
        Some(Entry {
            address: head.address,
            date: head.date,
            validators: Validators {
                etag: head.etag,
                last_modified: head.last_modified,
            },
            content_type: head.content_type,
            content_crs: head.content_crs,
            bytes: answer.to_owned(),
        })
    }

    /// Keeps the answer to a request in place of the one before.
    ///
    /// # Errors
    /// [`io::Error`] where it cannot be written; what was there before still is.
    pub fn keep(&self, request: &Request, entry: &Entry) -> io::Result<()> {
        self.write(request, entry)?.keep()
    }

    /// Writes the answer to a request beside the one before, which is still the one that is
    /// found.
    pub(super) fn write(&self, request: &Request, entry: &Entry) -> io::Result<Written> {
        let head = Head {
            address: entry.address.clone(),
            date: entry.date.clone(),
            etag: entry.validators.etag.clone(),
            last_modified: entry.validators.last_modified.clone(),
            content_type: entry.content_type.clone(),
            content_crs: entry.content_crs.clone(),
        };
        let mut bytes = serde_json::to_vec(&head)?;
        bytes.push(b'\n');
        bytes.extend_from_slice(&entry.bytes);
        let (stored, mark) = hidden(&Secrets::of_request(request), &bytes);
        let seal = Seal {
            sha256: checksum(&stored),
            mark,
        };
        let mut file = NamedTempFile::new_in(&self.folder)?;
        serde_json::to_writer(&mut file, &seal)?;
        file.write_all(b"\n")?;
        file.write_all(&stored)?;
        file.as_file().sync_all()?;
        Ok(Written {
            file: file.into_temp_path(),
            path: self.path(request),
        })
    }

    /// Where the answer to a request stands. The name tells nothing of its keys.
    fn path(&self, request: &Request) -> PathBuf {
        let mut hasher = Sha256::new();
        hasher.update(request.url.as_str());
        hasher.update([0]);
        hasher.update(request.accept);
        for (name, value) in request.form.iter().flatten() {
            for part in [name, value] {
                hasher.update([0]);
                hasher.update(part);
            }
        }
        self.folder.join(hex::encode(hasher.finalize()))
    }
}

/// An answer that is written but not found yet; it is deleted where it is not kept.
pub(super) struct Written {
    file: TempPath,
    path: PathBuf,
}

impl Written {
    pub(super) fn keep(self) -> io::Result<()> {
        Ok(self.file.persist(self.path)?)
    }
}

/// Deletes what was begun and not renamed. Where that is not possible, it takes room and no more.
fn sweep(folder: &Path) {
    const DAY: Duration = Duration::from_hours(24);
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let is_unfinished = entry.file_name().to_string_lossy().starts_with(".tmp");
        let modified = entry.metadata().and_then(|data| data.modified());
        let age = modified.ok().and_then(|time| time.elapsed().ok());
        if is_unfinished && age.is_some_and(|age| age > DAY) {
            let _ = fs::remove_file(entry.path());
        }
    }
}

fn line_and_rest(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let end = memchr::memchr(b'\n', bytes)?;
    Some((&bytes[..end], &bytes[end + 1..]))
}

/// The SHA-256 of something, in hexadecimal digits.
pub(super) fn checksum(bytes: &[u8]) -> String {
    hex::encode(Sha256::digest(bytes))
}
