//! Random numbers that are the same in every run.

use sha2::{Digest as _, Sha256};

/// `SplitMix64` (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014).
pub(crate) struct Random(u64);

impl Random {
    /// A generator for one question of one schedule.
    pub(super) fn of(seed: u64, question: &str, time: u32) -> Self {
        let start = Sha256::digest(format!("{seed} {time} {question}"));
        Self(u64::from_le_bytes(start[..8].try_into().unwrap()))
    }

    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number below a bound.
    pub(crate) fn below(&mut self, bound: usize) -> usize {
        (self.next() % bound as u64) as usize
    }

    /// A number from 0 to 1.
    pub(crate) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }
}
