//! Answers of GeoServices REST, which tell errors with status 200.

use serde::Deserialize;
use serde::de::DeserializeOwned;

use crate::service::connection::Unread;
use crate::service::features::json;
use crate::service::fetch::first_words;
use crate::service::{Entry, ServiceError};

#[derive(Deserialize)]
struct Told {
    error: Option<Problem>,
}

#[derive(Deserialize)]
struct Problem {
    #[serde(default)]
    code: i64,
    message: Option<String>,
    #[serde(default)]
    details: Option<Vec<String>>,
}

/// No error is longer, in bytes; what is longer is not read twice. Common practice, no source.
const LONGEST_ERROR: usize = 1 << 16;

/// Reads an answer, or the error in its place.
pub(super) fn read<T: DeserializeOwned>(entry: &Entry) -> Result<T, Unread> {
    if entry.bytes.len() <= LONGEST_ERROR
        && let Ok(Told {
            error: Some(problem),
        }) = serde_json::from_slice(json::body(entry))
    {
        return Err(problem.unread(entry));
    }
    Ok(json::read(entry)?)
}

impl Problem {
    fn unread(self, entry: &Entry) -> Unread {
        let status = format!("error {}", self.code);
        let parts = self.message.into_iter();
        let words: Vec<String> = parts.chain(self.details.into_iter().flatten()).collect();
        let told = first_words(words.join("; ").as_bytes());
        match self.code {
            // As the statuses of HTTP of the same numbers.
            408 | 425 | 429 | 500 | 502 | 503 | 504 => Unread::Busy(format!("{status}{told}")),
            498 | 499 => Unread::Unfit(ServiceError::Refused {
                address: entry.address.clone(),
                status,
                told: format!("{told} (it wants a valid token, as in ADDRESS?token=…)"),
            }),
            _ => Unread::Unfit(ServiceError::Refused {
                address: entry.address.clone(),
                status,
                told,
            }),
        }
    }
}
