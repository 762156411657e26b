//! What all requests of one run may take together.

use std::future::Future;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU64, Ordering};

use tokio::sync::{Semaphore, SemaphorePermit};
use tokio::time::{Instant, timeout_at};

use super::{Limits, ServiceError};

/// Counts requests and bytes, and knows when all has to be over.
pub(super) struct Budget {
    requests: AtomicU64,
    bytes: AtomicU64,
    end: OnceLock<Instant>,
    places: Semaphore,
    limits: Limits,
}

impl Budget {
    pub(super) fn new(limits: Limits) -> Self {
        Self {
            requests: AtomicU64::new(0),
            bytes: AtomicU64::new(0),
            end: OnceLock::new(),
            places: Semaphore::new(limits.at_once.max(1)),
            limits,
        }
    }

    /// A place among the requests that are under way at once.
    pub(super) async fn place(&self) -> Option<SemaphorePermit<'_>> {
        // It is never closed.
        self.places.acquire().await.ok()
    }

    /// One more request.
    pub(super) fn request(&self, address: &str) -> Result<(), ServiceError> {
        let so_far = self.requests.fetch_add(1, Ordering::Relaxed);
        if so_far < self.limits.requests {
            return Ok(());
        }
        Err(spent(address, format!("{} requests", self.limits.requests)))
    }

    /// So many bytes more.
    pub(super) fn bytes(&self, count: usize, address: &str) -> Result<(), ServiceError> {
        let so_far = self.bytes.fetch_add(count as u64, Ordering::Relaxed);
        if so_far.saturating_add(count as u64) <= self.limits.all_bytes {
            return Ok(());
        }
        Err(spent(address, format!("{} bytes", self.limits.all_bytes)))
    }

    /// What comes in time; the time runs from the first call on.
    pub(super) async fn in_time<T>(
        &self,
        address: &str,
        work: impl Future<Output = Result<T, ServiceError>>,
    ) -> Result<T, ServiceError> {
        let end = *self.end.get_or_init(|| Instant::now() + self.limits.whole);
        match timeout_at(end, work).await {
            Ok(outcome) => outcome,
            Err(_) => Err(spent(
                address,
                format!("{} s", self.limits.whole.as_secs_f64()),
            )),
        }
    }
}

fn spent(address: &str, spent: String) -> ServiceError {
    ServiceError::Spent {
        address: address.to_owned(),
        spent,
    }
}
