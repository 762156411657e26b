//! A part of a file: ranges of bytes (RFC 9110, section 14).

use std::ops::Range;

use reqwest::header::{self, HeaderValue};
use reqwest::{RequestBuilder, StatusCode, Url};

use super::{Failed, Fetcher, Validators, text};
use crate::service::ServiceError;
use crate::service::secret::{Secrets, shown};

/// One state of a file: how the server knows it again, and how long it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edition {
    /// As the server says.
    pub validators: Validators,
    /// Bytes of the whole file.
    pub length: u64,
}

/// Some bytes of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// The bytes: as many as were asked for, or up to the end of the file.
    pub bytes: Vec<u8>,
    /// The state of the file that they are of.
    pub edition: Edition,
}

/// What is at hand of the file.
#[derive(Clone, Copy, Debug)]
pub enum Held<'a> {
    /// Nothing.
    Nothing,
    /// The same part: it need not be sent again where the file has not changed.
    Same(&'a Edition),
    /// Other parts: nothing is wanted where the file has changed.
    Others(&'a Edition),
}

/// What a server answers to a question for a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PartAnswer {
    /// The part.
    Part(Part),
    /// What is at hand still holds.
    NotModified,
}

impl Fetcher {
    /// Fetches a part of a file, tried as often as [`fetch`](Self::fetch) does. A range that
    /// reaches beyond the end of the file gives what there is of it.
    ///
    /// # Errors
    /// [`ServiceError`]: as for `fetch`; where the server gives the whole file instead, which is
    /// not read; where it gives another part; where the file is no longer the one that other
    /// parts are of.
    pub async fn fetch_part(
        &self,
        url: &Url,
        range: Range<u64>,
        held: Held<'_>,
    ) -> Result<PartAnswer, ServiceError> {
        let secrets = self.secrets.clone().and(&Secrets::of(url));
        let answer = self.bounded(url, || self.part_once(url, &range, held));
        answer.await.map_err(|error| error.without(&secrets))
    }

    async fn part_once(
        &self,
        url: &Url,
        range: &Range<u64>,
        held: Held<'_>,
    ) -> Result<PartAnswer, Failed> {
        let last = range.end.saturating_sub(1);
        let request = self
            .client
            .get(url.clone())
            .header(header::RANGE, format!("bytes={}-{last}", range.start))
            // Of a packed answer the ranges would be those of the packed bytes.
            .header(header::ACCEPT_ENCODING, "identity");
        let sent = self.accepted(conditional(request, held), url).await;
        let response = sent.map_err(|failed| changed_or(failed, url, held))?;
        match response.status() {
            StatusCode::NOT_MODIFIED => return Ok(PartAnswer::NotModified),
            StatusCode::PARTIAL_CONTENT => {}
            status => {
                return Err(Failed::Ended(ServiceError::NoParts {
                    address: shown(url),
                    status: status.to_string(),
                }));
            }
        }
        let refused = |problem: String| {
            Failed::Ended(ServiceError::Unfit {
                address: shown(url),
                problem,
            })
        };
        let stated = text(response.headers(), header::CONTENT_RANGE);
        let length = length_of_whole(stated.as_deref(), range).ok_or_else(|| {
            refused(format!(
                "asked for bytes {} to {last}, the server sends {}",
                range.start,
                stated.map_or_else(
                    || "a part without saying which".to_owned(),
                    |stated| format!("{stated:?}")
                )
            ))
        })?;
        let edition = Edition {
            validators: Validators::of(response.headers()),
            length,
        };
        if let Held::Others(known) = held
            && *known != edition
        {
            return Err(Failed::Ended(ServiceError::Changed {
                address: shown(url),
            }));
        }
        let wanted = range.end.min(length) - range.start;
        let bytes = self.body(response, url, wanted).await?;
        if bytes.len() as u64 != wanted {
            return Err(refused(format!(
                "asked for {wanted} bytes from {} on, the server sends {}",
                range.start,
                bytes.len()
            )));
        }
        Ok(PartAnswer::Part(Part { bytes, edition }))
    }
}

/// A request with its condition. A weak tag identifies no bytes (RFC 9110, section 8.8.3.2): it
/// serves for asking whether anything changed, not for putting parts together.
fn conditional(request: RequestBuilder, held: Held<'_>) -> RequestBuilder {
    let (edition, of_tag, of_date) = match held {
        Held::Nothing => return request,
        Held::Same(edition) => (edition, header::IF_NONE_MATCH, header::IF_MODIFIED_SINCE),
        Held::Others(edition) => (edition, header::IF_MATCH, header::IF_UNMODIFIED_SINCE),
    };
    let Validators {
        etag,
        last_modified,
    } = &edition.validators;
    let etag = etag
        .as_deref()
        .filter(|etag| matches!(held, Held::Same(_)) || !etag.starts_with("W/"));
    // Of both, the tag decides: a server that knows it looks at no date (section 13.2.2).
    let conditions = [(of_tag, etag), (of_date, last_modified.as_deref())];
    conditions
        .into_iter()
        .filter_map(|(name, value)| Some((name, HeaderValue::from_str(value?).ok()?)))
        .fold(request, |request, (name, value)| {
            request.header(name, value)
        })
}

/// A condition that does not hold: the file is another one.
fn changed_or(failed: Failed, url: &Url, held: Held<'_>) -> Failed {
    match (&failed, held) {
        (Failed::Ended(ServiceError::Refused { status, .. }), Held::Others(_))
            if status.starts_with("412") =>
        {
            Failed::Ended(ServiceError::Changed {
                address: shown(url),
            })
        }
        _ => failed,
    }
}

/// The length of the whole file, as `Content-Range` states it (section 14.4), where the part is
/// the one that was asked for.
fn length_of_whole(stated: Option<&str>, range: &Range<u64>) -> Option<u64> {
    let (part, length) = stated?.strip_prefix("bytes ")?.split_once('/')?;
    let (first, last) = part.split_once('-')?;
    let [first, last, length]: [u64; 3] = [
        first.trim().parse().ok()?,
        last.trim().parse().ok()?,
        length.trim().parse().ok()?,
    ];
    let whole = first == range.start && last < length;
    (whole && last.checked_add(1)? == range.end.min(length)).then_some(length)
}

#[cfg(test)]
mod tests {
    use super::length_of_whole;

    #[test]
    fn a_part_is_the_one_that_was_asked_for() {
        // The examples of RFC 9110, section 14.4, and what does not fit them.
        assert_eq!(
            length_of_whole(Some("bytes 42-1233/1234"), &(42..1234)),
            Some(1234)
        );
        assert_eq!(
            length_of_whole(Some("bytes 0-99/300"), &(0..100)),
            Some(300)
        );
        assert_eq!(
            length_of_whole(Some("bytes 0-99/100"), &(0..500)),
            Some(100)
        );
        for stated in [
            "bytes 42-1233/*",
            "bytes */1234",
            "bytes 0-99/99",
            "bytes 0-98/300",
            "bytes 1-100/300",
            "bytes 0-99",
            "items 0-99/300",
            "bytes 0-18446744073709551615/18446744073709551615",
            "",
        ] {
            assert_eq!(length_of_whole(Some(stated), &(0..100)), None, "{stated}");
        }
        assert_eq!(length_of_whole(None, &(0..100)), None);
    }
}
