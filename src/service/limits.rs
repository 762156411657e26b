//! How much a service may send, how long it may take, and how often it is asked.

use std::time::Duration;

/// Bounds of all requests of one run. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// How long a connection may take to come about.
    pub connect: Duration,
    /// How long a server may send nothing. Map services may begin to answer late.
    pub silence: Duration,
    /// How long one answer may take from the request to its last byte.
    pub answer: Duration,
    /// How large an answer may be when it is unpacked, in bytes; read into features it takes
    /// many times that.
    pub bytes: u64,
    /// How often a request is tried again.
    pub retries: u32,
    /// The pause before the first of them; each further one is twice as long.
    pub pause: Duration,
    /// The longest pause, also where a server asks for a longer one.
    pub longest_pause: Duration,
    /// How many redirects are followed.
    pub redirects: usize,
    /// How many requests there may be in all, each try counted.
    pub requests: u64,
    /// How much may come in all, in bytes when it is unpacked.
    pub all_bytes: u64,
    /// How long all may take, from the first request on.
    pub whole: Duration,
    /// How many requests are under way at once.
    pub at_once: usize,
    /// How many features are asked for at a time.
    pub page: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            connect: Duration::from_secs(10),
            silence: Duration::from_mins(1),
            answer: Duration::from_mins(2),
            bytes: 64 << 20,
            retries: 4,
            pause: Duration::from_millis(500),
            longest_pause: Duration::from_mins(1),
            redirects: 5,
            requests: 20_000,
            all_bytes: 4 << 30,
            whole: Duration::from_mins(15),
            at_once: 4,
            page: 1000,
        }
    }
}
