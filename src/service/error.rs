//! What goes wrong with a service.

use std::time::Duration;

use thiserror::Error;

/// What went wrong with a service; the address is shown without its keys.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum ServiceError {
    /// No connection, a broken one, or an answer that ends early.
    #[error("{address}: {problem} (tried {tries} times)")]
    Broken {
        /// The address.
        address: String,
        /// What happened the last time.
        problem: String,
        /// How often it was tried.
        tries: u32,
    },
    /// The server refuses.
    #[error("{address}: the server answers {status}{told}")]
    Refused {
        /// The address.
        address: String,
        /// Its status with its name.
        status: String,
        /// What it says of it, behind a colon.
        told: String,
    },
    /// The server is busy, and stays so.
    #[error("{address}: the server answers {status} (tried {tries} times)")]
    Busy {
        /// The address.
        address: String,
        /// Its status with its name.
        status: String,
        /// How often it was tried.
        tries: u32,
    },
    /// An answer is too large.
    #[error("{address}: the answer is larger than {limit} bytes")]
    TooLarge {
        /// The address.
        address: String,
        /// The limit.
        limit: u64,
    },
    /// An answer takes too long.
    #[error("{address}: no whole answer within {} s", limit.as_secs_f64())]
    TooSlow {
        /// The address.
        address: String,
        /// The limit.
        limit: Duration,
    },
    /// A redirect leads where it may not.
    #[error("{address}: {problem}")]
    Led {
        /// The address that was asked for.
        address: String,
        /// Where it leads, and why that is refused.
        problem: String,
    },
    /// The client cannot be made.
    #[error("no request can be made: {0}")]
    Client(String),
}
