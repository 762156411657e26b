//! One run's way to one service.

use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::SystemTime;
use std::{io, mem};

use reqwest::Url;

use super::cache::Written;
use super::secret::{Secrets, shown};
use super::{Address, Answer, Cache, Entry, Fetcher, Limits, Request, ServiceError, Validators};

/// Where answers are taken from.
#[derive(Clone, Debug)]
pub enum Answers {
    /// From the service; nothing is kept.
    Fetched,
    /// From the service, and kept as soon as all is there that was asked for. What is kept
    /// already is used where the service says that it still holds.
    FetchedAndKept(Cache),
    /// From what is kept; nothing is asked for, not even the address of a host.
    Kept(Cache),
}

/// One run's way to one service: what it answers, fetched within [`Limits`] or kept on the disk.
pub struct Connection {
    pub(super) fetcher: Option<Fetcher>,
    pub(super) cache: Option<Cache>,
    limits: Limits,
    /// Those of the address that the user names.
    secrets: Secrets,
    written: Mutex<Vec<(Url, Written)>>,
}

/// Why an answer is not kept.
pub(super) enum Unread {
    /// It says that the service is busy, in words such as a status.
    Busy(String),
    /// It is not what was asked for.
    Unfit(ServiceError),
}

impl From<ServiceError> for Unread {
    fn from(error: ServiceError) -> Self {
        Self::Unfit(error)
    }
}

impl Connection {
    /// A way to an address that the user names, and what it leads to.
    ///
    /// # Errors
    /// [`ServiceError::Client`] where no request can be made.
    pub fn open(address: &Address, answers: Answers, limits: Limits) -> Result<Self, ServiceError> {
        let (asks, cache) = match answers {
            Answers::Fetched => (true, None),
            Answers::FetchedAndKept(cache) => (true, Some(cache)),
            Answers::Kept(cache) => (false, Some(cache)),
        };
        let fetcher = asks.then(|| Fetcher::new(address, limits)).transpose()?;
        Ok(Self {
            fetcher,
            cache,
            limits,
            secrets: Secrets::of(address.url()),
            written: Mutex::default(),
        })
    }

    /// The bounds of this run.
    #[must_use]
    pub const fn limits(&self) -> &Limits {
        &self.limits
    }

    /// The answer to a request; what the request says to be known is not looked at.
    ///
    /// # Errors
    /// [`ServiceError`] where there is none within the limits, none is kept, or it cannot be
    /// kept.
    pub async fn get(&self, request: &Request) -> Result<Entry, ServiceError> {
        let entry = self.read(request, |entry| Ok(entry.clone())).await?;
        self.settle(Ok(entry))
    }

    /// What an answer says. One that cannot be read is not kept, any other as soon as all is
    /// settled; one that says that the service is busy is asked for again.
    pub(super) async fn read<T>(
        &self,
        request: &Request,
        read: impl Fn(&Entry) -> Result<T, Unread>,
    ) -> Result<T, ServiceError> {
        let told = self.read_telling_all(request, read).await;
        told.map_err(|error| error.without(&Secrets::of_request(request).and(&self.secrets)))
    }

    async fn read_telling_all<T>(
        &self,
        request: &Request,
        read: impl Fn(&Entry) -> Result<T, Unread>,
    ) -> Result<T, ServiceError> {
        let address = shown(&request.url);
        let kept = self.cache.as_ref().and_then(|cache| cache.find(request));
        let Some(fetcher) = &self.fetcher else {
            let Some(kept) = kept else {
                return Err(ServiceError::NotKept { address });
            };
            return read(&kept).map_err(|unread| unread.ended(address, 1));
        };
        // What cannot be read any more is as good as none.
        let mut kept = kept.filter(|kept| read(kept).is_ok());
        let mut tries = 0;
        loop {
            tries += 1;
            let entry = fetch(fetcher, request, kept.take()).await?;
            match read(&entry) {
                Ok(value) => {
                    self.write(request, &entry)?;
                    return Ok(value);
                }
                Err(Unread::Busy(_)) if tries <= self.limits.retries => {
                    fetcher.wait(tries, &address).await?;
                }
                Err(unread) => return Err(unread.ended(address, tries)),
            }
        }
    }

    fn write(&self, request: &Request, entry: &Entry) -> Result<(), ServiceError> {
        let Some(cache) = &self.cache else {
            return Ok(());
        };
        let written = cache
            .write(request, entry)
            .map_err(|error| cannot_keep(&request.url, &error))?;
        self.written().push((request.url.clone(), written));
        Ok(())
    }

    /// Keeps the answers so far where they made an outcome together. Those that did not are
    /// forgotten, however well each can be read: else the server would confirm them next time.
    pub(super) fn settle<T>(&self, outcome: Result<T, ServiceError>) -> Result<T, ServiceError> {
        let written = mem::take(&mut *self.written());
        let value = outcome?;
        for (url, written) in written {
            written.keep().map_err(|error| cannot_keep(&url, &error))?;
        }
        Ok(value)
    }

    fn written(&self) -> MutexGuard<'_, Vec<(Url, Written)>> {
        self.written.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn cannot_keep(url: &Url, error: &io::Error) -> ServiceError {
    ServiceError::CannotKeep {
        address: shown(url),
        problem: error.to_string(),
    }
}

impl Unread {
    fn ended(self, address: String, tries: u32) -> ServiceError {
        match self {
            Self::Busy(status) => ServiceError::Busy {
                address,
                status,
                tries,
            },
            Self::Unfit(error) => error,
        }
    }
}

/// A new answer, or the one at hand with a new date.
async fn fetch(
    fetcher: &Fetcher,
    request: &Request,
    kept: Option<Entry>,
) -> Result<Entry, ServiceError> {
    // Only of what is merely read can a server say that it has not changed (RFC 9110, section
    // 13.1.2).
    let known = match (&kept, &request.form) {
        (Some(kept), None) => kept.validators.clone(),
        _ => Validators::default(),
    };
    let asked = Request {
        known,
        ..request.clone()
    };
    let date = httpdate::fmt_http_date(SystemTime::now());
    match (fetcher.fetch(&asked).await?, kept) {
        (
            Answer::Body {
                bytes,
                content_type,
                content_crs,
                address,
                validators,
            },
            _,
        ) => Ok(Entry {
            address,
            date,
            validators,
            content_type,
            content_crs,
            bytes,
        }),
        (Answer::NotModified, Some(kept)) if asked.known != Validators::default() => {
            Ok(Entry { date, ..kept })
        }
        (Answer::NotModified, _) => Err(ServiceError::Unfit {
            address: shown(&request.url),
            problem: "the server answers that nothing has changed, but nothing was at hand"
                .to_owned(),
        }),
    }
}
