//! One request, tried until it is answered or refused.

mod asked;
mod failed;
mod guard;
mod part;
mod pause;
mod told;

pub use asked::{Answer, Request, Validators};
pub use part::{Edition, Held, Part, PartAnswer};
pub(super) use told::{first_words, page_title};

use std::sync::{Arc, OnceLock};

use reqwest::header::{self, HeaderName};
use reqwest::{Client, Method, Response, StatusCode, Url};
use tokio::time::{sleep, timeout};

use self::asked::text;
use self::failed::Failed;
use self::guard::Guard;
use super::budget::Budget;
use super::secret::{Secrets, disguised, shown};
use super::{Address, Limits, ServiceError};

/// Carries out requests.
///
/// Addresses of a network of one's own are reached where the user names such a one; from a
/// public address nothing leads there. Requests, bytes and time are counted over all of its
/// requests.
pub struct Fetcher {
    client: Client,
    guard: Arc<Guard>,
    limits: Limits,
    budget: Budget,
    /// Those of the address that the user names.
    secrets: Secrets,
    /// What the server said when it asked not to be asked again for longer than is waited.
    left_alone: OnceLock<String>,
}

impl Fetcher {
    /// A fetcher for an address that the user names, and what it leads to.
    ///
    /// # Errors
    /// [`ServiceError::Client`] where the client cannot be made.
    pub fn new(address: &Address, limits: Limits) -> Result<Self, ServiceError> {
        // Another part of the process may have chosen one: either serves.
        let _ = rustls::crypto::ring::default_provider().install_default();
        let guard = Arc::new(Guard::of(address));
        let client = Client::builder()
            .user_agent(concat!("sillmark/", env!("CARGO_PKG_VERSION")))
            .connect_timeout(limits.connect)
            .read_timeout(limits.silence)
            // It would tell the keys of one host to another.
            .referer(false)
            .redirect(guard.redirects(limits.redirects))
            .dns_resolver(Arc::clone(&guard))
            .build()
            .map_err(|error| ServiceError::Client(error.to_string()))?;
        Ok(Self {
            client,
            guard,
            limits,
            budget: Budget::new(limits),
            secrets: Secrets::of(address.url()),
            left_alone: OnceLock::new(),
        })
    }

    /// Carries out a request: again after a pause where the connection breaks or the server is
    /// busy (408, 425, 429, 500, 502, 503, 504), as long as the server asks for. Where it asks
    /// for a longer one than the limit, nothing is asked any more.
    ///
    /// # Errors
    /// [`ServiceError`] where there is no whole answer within the limits, or the request leads
    /// where it may not.
    pub async fn fetch(&self, request: &Request) -> Result<Answer, ServiceError> {
        let secrets = self.secrets.clone().and(&Secrets::of_request(request));
        let answer = self.bounded(&request.url, || self.once(request)).await;
        answer.map_err(|error| error.without(&secrets))
    }

    /// What is carried out at an address, as often as it takes and within the bounds of the run.
    async fn bounded<T>(
        &self,
        url: &Url,
        once: impl AsyncFn() -> Result<T, Failed>,
    ) -> Result<T, ServiceError> {
        let address = shown(url);
        self.guard.check(url).map_err(|problem| {
            let address = address.clone();
            ServiceError::Led { address, problem }
        })?;
        let work = async {
            let _place = self.budget.place().await;
            self.try_again(url, &address, once).await
        };
        self.budget.in_time(&address, work).await
    }

    /// Waits before something is tried again for which the answer itself asks.
    pub(super) async fn wait(&self, tries: u32, address: &str) -> Result<(), ServiceError> {
        let pause = async {
            sleep(pause::doubled(tries, &self.limits)).await;
            Ok(())
        };
        self.budget.in_time(address, pause).await
    }

    async fn try_again<T>(
        &self,
        url: &Url,
        address: &str,
        once: impl AsyncFn() -> Result<T, Failed>,
    ) -> Result<T, ServiceError> {
        let mut tries = 0;
        loop {
            tries += 1;
            if let Some(status) = self.left_alone.get() {
                return Err(ServiceError::Busy {
                    address: address.to_owned(),
                    status: status.clone(),
                    tries,
                });
            }
            self.budget.request(address)?;
            let outcome = match timeout(self.limits.answer, once()).await {
                Ok(outcome) => outcome,
                Err(_) => Err(Failed::Broken(format!(
                    "no whole answer within {} s",
                    self.limits.answer.as_secs_f64()
                ))),
            };
            let failed = match outcome {
                Ok(answer) => return Ok(answer),
                Err(Failed::Ended(error)) => return Err(error),
                Err(failed) => failed,
            };
            let pause = match pause::before(tries, failed.asked(), &self.limits) {
                Ok(pause) => pause,
                Err(too_long) => {
                    let failed = failed.left_alone_for(too_long);
                    if let Failed::Busy { status, .. } = &failed {
                        // Whoever was first told it.
                        let _ = self.left_alone.set(status.clone());
                    }
                    return Err(failed.ended(url, tries));
                }
            };
            if tries > self.limits.retries {
                return Err(failed.ended(url, tries));
            }
            sleep(pause).await;
        }
    }

    /// Carries out a request once.
    async fn once(&self, request: &Request) -> Result<Answer, Failed> {
        let url = &request.url;
        let response = self.accepted(self.builder(request), url).await?;
        if response.status() == StatusCode::NOT_MODIFIED {
            return Ok(Answer::NotModified);
        }
        let headers = response.headers();
        let address = shown(response.url());
        let content_crs = text(headers, HeaderName::from_static("content-crs"));
        let content_type = text(headers, header::CONTENT_TYPE);
        let validators = Validators::of(headers);
        Ok(Answer::Body {
            bytes: self.body(response, url, self.limits.bytes).await?,
            content_type,
            content_crs,
            address,
            validators,
        })
    }

    /// Sends a request once, for an answer that is one: a body, or that nothing has changed.
    async fn accepted(
        &self,
        request: reqwest::RequestBuilder,
        url: &Url,
    ) -> Result<Response, Failed> {
        let sent = request.send().await;
        let response = sent.map_err(|error| Failed::of(&error, url))?;
        let status = response.status();
        if is_busy(status) {
            return Err(Failed::Busy {
                status: status.to_string(),
                retry_after: text(response.headers(), header::RETRY_AFTER),
            });
        }
        if let Some(location) =
            text(response.headers(), header::LOCATION).filter(|_| status.is_redirection())
        {
            // Of another scheme: the client does not even ask whether to follow.
            let to = Url::parse(&location).map_or_else(|_| disguised(&location), |url| shown(&url));
            return Err(Failed::Ended(ServiceError::Led {
                address: shown(url),
                problem: format!("it leads to {to}, which is not followed"),
            }));
        }
        if !status.is_success() && status != StatusCode::NOT_MODIFIED {
            let bytes = self.body(response, url, self.limits.bytes).await;
            return Err(Failed::Ended(ServiceError::Refused {
                address: shown(url),
                status: status.to_string(),
                told: first_words(&bytes.unwrap_or_default()),
            }));
        }
        Ok(response)
    }

    fn builder(&self, request: &Request) -> reqwest::RequestBuilder {
        let method = match request.form {
            Some(_) => Method::POST,
            None => Method::GET,
        };
        let mut builder = self
            .client
            .request(method, request.url.clone())
            .header(header::ACCEPT, request.accept);
        if let Some(form) = &request.form {
            builder = builder.form(form);
        }
        if let Some(etag) = &request.known.etag {
            builder = builder.header(header::IF_NONE_MATCH, etag);
        }
        if let Some(date) = &request.known.last_modified {
            builder = builder.header(header::IF_MODIFIED_SINCE, date);
        }
        builder
    }

    /// The whole body, piece by piece, so that one that does not end is given up in time.
    async fn body(&self, mut response: Response, url: &Url, limit: u64) -> Result<Vec<u8>, Failed> {
        let mut bytes = Vec::new();
        loop {
            match response.chunk().await {
                Ok(Some(piece)) => {
                    let address = shown(url);
                    self.budget
                        .bytes(piece.len(), &address)
                        .map_err(Failed::Ended)?;
                    if (bytes.len() + piece.len()) as u64 > limit {
                        return Err(Failed::Ended(ServiceError::TooLarge { address, limit }));
                    }
                    bytes.extend_from_slice(&piece);
                }
                Ok(None) => return Ok(bytes),
                Err(error) => return Err(Failed::of(&error, url)),
            }
        }
    }
}

fn is_busy(status: StatusCode) -> bool {
    matches!(status.as_u16(), 408 | 425 | 429 | 500 | 502 | 503 | 504)
}
