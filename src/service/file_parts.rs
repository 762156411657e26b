//! A file that a server gives in parts, of which only some are read.

use std::ops::Range;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::SystemTime;

use futures_util::{StreamExt as _, TryStreamExt as _, stream};
use reqwest::Url;

use super::cache::checksum;
use super::secret::shown;
use super::{
    Address, Connection, Edition, Entry, Held, Part, PartAnswer, Request, ServiceError, Validators,
};

/// A file by its address, of which parts are read, all of one state of the file.
///
/// Parts are kept in the cache, each by its range. Whether the file has changed is asked once,
/// with the first part; offline the cache alone answers.
pub struct FileParts<'connection> {
    connection: &'connection Connection,
    url: Url,
    edition: Edition,
    date: String,
    first: Vec<u8>,
    read: AtomicU64,
}

/// How much of a file's start is read to begin with, bytes: the directory of a file that was
/// written for being read in parts mostly lies within (common practice, no source).
const START_BYTES: u64 = 64 << 10;

impl<'connection> FileParts<'connection> {
    /// Begins to read a file: its first 64 KiB.
    ///
    /// # Errors
    /// [`ServiceError`] where they cannot be had, or the server gives no parts.
    pub async fn open(
        connection: &'connection Connection,
        address: &Address,
    ) -> Result<Self, ServiceError> {
        let mut file = Self {
            connection,
            url: address.url().clone(),
            edition: Edition {
                validators: Validators::default(),
                length: 0,
            },
            date: String::new(),
            first: Vec::new(),
            read: AtomicU64::new(0),
        };
        let start = 0..START_BYTES;
        let kept = file.kept(&start);
        let Some(fetcher) = &connection.fetcher else {
            let (part, date) = kept.ok_or_else(|| file.not_kept())?;
            file.begin(part, date);
            return Ok(file);
        };
        let held = match &kept {
            Some((part, _)) if is_known_again(&part.edition) => Held::Same(&part.edition),
            _ => Held::Nothing,
        };
        let answer = fetcher.fetch_part(&file.url, start.clone(), held).await?;
        let part = match (answer, kept) {
            (PartAnswer::Part(part), _) | (PartAnswer::NotModified, Some((part, _))) => part,
            (PartAnswer::NotModified, None) => return Err(file.unasked()),
        };
        let date = file.keep(&start, &part)?;
        file.begin(part, date);
        Ok(file)
    }

    fn begin(&mut self, part: Part, date: String) {
        *self.read.get_mut() = part.bytes.len() as u64;
        self.edition = part.edition;
        self.first = part.bytes;
        self.date = date;
    }

    /// Bytes of the whole file.
    #[must_use]
    pub const fn length(&self) -> u64 {
        self.edition.length
    }

    /// Bytes that were read so far, from the server or from the cache.
    #[must_use]
    pub fn bytes_read(&self) -> u64 {
        self.read.load(Ordering::Relaxed)
    }

    /// When it was fetched, or last confirmed, as HTTP writes a date.
    #[must_use]
    pub fn date(&self) -> &str {
        &self.date
    }

    /// What tells this edition of the file from another: its length, and how the server knows it
    /// again; where it does not say, a digest of the file's start.
    #[must_use]
    pub fn edition(&self) -> String {
        let Validators {
            etag,
            last_modified,
        } = &self.edition.validators;
        let known = etag.as_ref().or(last_modified.as_ref());
        let known = known.map_or_else(|| checksum(&self.first), Clone::clone);
        format!("{} bytes, {known}", self.edition.length)
    }

    /// The start of the file, which is at hand.
    #[must_use]
    pub fn start(&self) -> &[u8] {
        &self.first
    }

    /// Reads parts, several at once, and hands them on in their order.
    ///
    /// # Errors
    /// [`ServiceError`] where one cannot be had, or is of another state of the file; and what
    /// `take` refuses.
    pub async fn read<E: From<ServiceError>>(
        &self,
        ranges: impl IntoIterator<Item = Range<u64>>,
        mut take: impl FnMut(Range<u64>, Vec<u8>) -> Result<(), E>,
    ) -> Result<(), E> {
        let parts = ranges.into_iter().map(|range| async move {
            let bytes = self.part(&range).await?;
            Ok::<_, ServiceError>((range, bytes))
        });
        let mut parts = stream::iter(parts).buffered(self.connection.limits().at_once.max(1));
        while let Some((range, bytes)) = parts.try_next().await? {
            take(range, bytes)?;
        }
        Ok(())
    }

    async fn part(&self, range: &Range<u64>) -> Result<Vec<u8>, ServiceError> {
        if range.end > self.edition.length || range.is_empty() {
            return Err(self.unfit(format!(
                "bytes {} to {} are none of the {} bytes of the file",
                range.start, range.end, self.edition.length
            )));
        }
        let limit = self.connection.limits().bytes;
        if range.end - range.start > limit {
            return Err(ServiceError::TooLarge {
                address: shown(&self.url),
                limit,
            });
        }
        let fetcher = self.connection.fetcher.as_ref();
        let may_be_kept = fetcher.is_none() || is_known_again(&self.edition);
        let kept = may_be_kept.then(|| self.kept(range)).flatten();
        let same = kept.filter(|(part, _)| part.edition == self.edition);
        let bytes = match (same, fetcher) {
            (Some((part, _)), _) => part.bytes,
            (None, None) => return Err(self.not_kept()),
            (None, Some(fetcher)) => {
                let held = Held::Others(&self.edition);
                let answer = fetcher.fetch_part(&self.url, range.clone(), held);
                let PartAnswer::Part(part) = answer.await? else {
                    return Err(self.unasked());
                };
                self.keep(range, &part)?;
                part.bytes
            }
        };
        self.read.fetch_add(bytes.len() as u64, Ordering::Relaxed);
        Ok(bytes)
    }

    /// A part from the cache, with its date.
    fn kept(&self, range: &Range<u64>) -> Option<(Part, String)> {
        let entry = self.connection.cache.as_ref()?.find(&self.key(range))?;
        let end = memchr::memchr(b'\n', &entry.bytes)?;
        let length = std::str::from_utf8(&entry.bytes[..end]).ok()?;
        let edition = Edition {
            validators: entry.validators,
            length: length.parse().ok()?,
        };
        let bytes = entry.bytes[end + 1..].to_owned();
        let wanted = range.end.min(edition.length).checked_sub(range.start)?;
        let part = Part { bytes, edition };
        (part.bytes.len() as u64 == wanted).then_some((part, entry.date))
    }

    /// Keeps a part behind a line with the length of the whole file; gives its date.
    fn keep(&self, range: &Range<u64>, part: &Part) -> Result<String, ServiceError> {
        let date = httpdate::fmt_http_date(SystemTime::now());
        let Some(cache) = &self.connection.cache else {
            return Ok(date);
        };
        let line = format!("{}\n", part.edition.length).into_bytes();
        let entry = Entry {
            address: shown(&self.url),
            date,
            validators: part.edition.validators.clone(),
            content_type: None,
            content_crs: None,
            bytes: [&line, part.bytes.as_slice()].concat(),
        };
        let kept = cache.keep(&self.key(range), &entry);
        kept.map_err(|error| ServiceError::CannotKeep {
            address: shown(&self.url),
            problem: error.to_string(),
        })?;
        Ok(entry.date)
    }

    /// What a part is kept by: its range stands where an address has its fragment, which is
    /// never sent.
    fn key(&self, range: &Range<u64>) -> Request {
        let mut url = self.url.clone();
        url.set_fragment(Some(&format!("bytes={}-{}", range.start, range.end)));
        Request {
            url,
            form: None,
            accept: "*/*",
            known: Validators::default(),
        }
    }

    fn not_kept(&self) -> ServiceError {
        ServiceError::NotKept {
            address: shown(&self.url),
        }
    }

    fn unasked(&self) -> ServiceError {
        self.unfit("the server answers that nothing has changed, which was not asked".to_owned())
    }

    fn unfit(&self, problem: String) -> ServiceError {
        ServiceError::Unfit {
            address: shown(&self.url),
            problem,
        }
    }
}

/// Whether parts of an edition that were kept earlier can be told from those of another.
fn is_known_again(edition: &Edition) -> bool {
    let Validators {
        etag,
        last_modified,
    } = &edition.validators;
    let strong = etag.as_ref().is_some_and(|etag| !etag.starts_with("W/"));
    strong || last_modified.is_some()
}
