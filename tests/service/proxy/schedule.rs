//! Which request meets which fault.

use std::time::Duration;

use super::fault::{Fault, Kind};
use super::random::Random;

/// A random schedule: by seed, question, and how often that was asked, so that the order in
/// which a client asks changes nothing.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Schedule {
    seed: u64,
    /// How likely a request meets a fault.
    chance: f64,
    /// Whether answers come with an `ETag`.
    pub(super) tags: bool,
}

impl Schedule {
    /// Faults at none up to six of ten requests.
    pub(crate) fn new(seed: u64) -> Self {
        let mut random = Random::new(seed);
        Self {
            seed,
            chance: 0.6 * random.share(),
            tags: random.below(2) == 0,
        }
    }

    /// Without a fault.
    pub(crate) const NONE: Self = Self {
        seed: 0,
        chance: 0.0,
        tags: true,
    };

    /// The fault that a question meets when it is asked for the given time.
    pub(super) fn fault(&self, question: &str, time: u32) -> Option<Fault> {
        let mut random = Random::of(self.seed, question, time);
        if random.share() >= self.chance {
            return None;
        }
        let kind = Kind::ALL[random.below(Kind::ALL.len())];
        Some(Fault {
            kind,
            share: random.share(),
            pause: Duration::from_millis(random.below(20) as u64),
            choice: random.below(1 << 16),
        })
    }
}
