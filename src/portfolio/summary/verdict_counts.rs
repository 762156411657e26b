//! Rows by verdict.

use std::ops::AddAssign;

use serde::{Deserialize, Serialize};

use crate::statement::Choice;
use crate::verdict::Verdict;

/// How many rows have each verdict.
///
/// ```
/// use sillmark::portfolio::summary::VerdictCounts;
/// use sillmark::verdict::Verdict;
/// let mut counts = VerdictCounts::default();
/// counts.add(Verdict::Protect);
/// assert_eq!((counts.of(Verdict::Protect), counts.total()), (1, 1));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct VerdictCounts([u64; 4]);

impl VerdictCounts {
    /// One more row.
    pub fn add(&mut self, verdict: Verdict) {
        self.0[place(verdict)] += 1;
    }

    /// Rows with this verdict.
    #[must_use]
    pub const fn of(&self, verdict: Verdict) -> u64 {
        self.0[place(verdict)]
    }

    /// Rows with any verdict.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.0.iter().sum()
    }

    /// Whether no row was counted.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.total() == 0
    }

    /// Verdicts and their rows, from the least to the most that has to happen.
    pub fn each(&self) -> impl Iterator<Item = (Verdict, u64)> + use<> {
        let counts = *self;
        let verdicts = Verdict::CHOICES.iter().map(|(_, verdict)| *verdict);
        verdicts.map(move |verdict| (verdict, counts.of(verdict)))
    }

    pub(super) const fn numbers(self) -> [u64; 4] {
        self.0
    }

    pub(super) const fn from_numbers(numbers: [u64; 4]) -> Self {
        Self(numbers)
    }
}

/// A single row.
impl From<Verdict> for VerdictCounts {
    fn from(verdict: Verdict) -> Self {
        let mut counts = Self::default();
        counts.add(verdict);
        counts
    }
}

impl AddAssign for VerdictCounts {
    fn add_assign(&mut self, more: Self) {
        for (count, more) in self.0.iter_mut().zip(more.0) {
            *count += more;
        }
    }
}

const fn place(verdict: Verdict) -> usize {
    match verdict {
        Verdict::Above => 0,
        Verdict::Protect => 1,
        Verdict::Engineer => 2,
        Verdict::Unresolved => 3,
    }
}
