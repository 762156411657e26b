//! Tries that gave no answer.

use std::time::Duration;

use reqwest::Url;

use super::{guard, pause};
use crate::service::ServiceError;
use crate::service::secret::shown;

/// Why a try gave no answer.
pub(super) enum Failed {
    /// The next one may.
    Broken(String),
    /// The server asks to come back later.
    Busy {
        status: String,
        retry_after: Option<String>,
    },
    /// No further one will.
    Ended(ServiceError),
}

impl Failed {
    pub(super) fn of(error: &reqwest::Error, url: &Url) -> Self {
        if let Some(problem) = guard::refusal(error) {
            return Self::Ended(ServiceError::Led {
                address: shown(url),
                problem,
            });
        }
        Self::Broken(root(error))
    }

    pub(super) fn asked(&self) -> Option<&str> {
        match self {
            Self::Busy { retry_after, .. } => retry_after.as_deref(),
            Self::Broken(_) | Self::Ended(_) => None,
        }
    }

    /// What is said where a server asks for a longer pause than is made.
    pub(super) fn left_alone_for(self, pause: Duration) -> Self {
        match self {
            Self::Busy {
                status,
                retry_after,
            } => Self::Busy {
                status: format!(
                    "{status} and asks to be left alone for {}",
                    pause::words(pause)
                ),
                retry_after,
            },
            other => other,
        }
    }

    pub(super) fn ended(self, url: &Url, tries: u32) -> ServiceError {
        let address = shown(url);
        match self {
            Self::Broken(problem) => ServiceError::Broken {
                address,
                problem,
                tries,
            },
            Self::Busy { status, .. } => ServiceError::Busy {
                address,
                status,
                tries,
            },
            Self::Ended(error) => error,
        }
    }
}

/// The innermost cause, which says what happened; those around it repeat the address.
fn root(error: &dyn std::error::Error) -> String {
    let mut innermost = error;
    while let Some(source) = innermost.source() {
        innermost = source;
    }
    innermost.to_string()
}
