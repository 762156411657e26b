//! How often each of a few codes came by.

use std::borrow::Cow;
use std::collections::BTreeMap;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Counts by code, sorted by code.
///
/// A row brings several codes, and all of them are constants of the program: they are found by
/// their address first, which spares comparing their letters.
///
/// ```
/// use sillmark::portfolio::summary::CodeTally;
/// let mut tally = CodeTally::default();
/// tally.add("zone-edge");
/// tally.add("floodway");
/// tally.add("zone-edge");
/// assert_eq!(tally.each().collect::<Vec<_>>(), [("floodway", 1), ("zone-edge", 2)]);
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CodeTally {
    counts: Vec<(Cow<'static, str>, u64)>,
}

impl CodeTally {
    /// One more of `code`.
    pub fn add(&mut self, code: &'static str) {
        let same = |known: &Cow<'static, str>| matches!(known, Cow::Borrowed(known) if std::ptr::eq(*known, code));
        match self.counts.iter_mut().find(|(known, _)| same(known)) {
            Some((_, count)) => *count += 1,
            None => self.add_many(Cow::Borrowed(code), 1),
        }
    }

    fn add_many(&mut self, code: Cow<'static, str>, number: u64) {
        match self.counts.binary_search_by(|(known, _)| known.cmp(&code)) {
            Ok(place) => {
                let (known, count) = &mut self.counts[place];
                *count += number;
                // A tally that was read back owns its codes; from now on it knows the address.
                if matches!(code, Cow::Borrowed(_)) {
                    *known = code;
                }
            }
            Err(place) => self.counts.insert(place, (code, number)),
        }
    }

    /// Adds the counts of another tally.
    pub fn merge(&mut self, other: &Self) {
        for (code, count) in &other.counts {
            self.add_many(code.clone(), *count);
        }
    }

    /// How often `code` came by.
    #[must_use]
    pub fn of(&self, code: &str) -> u64 {
        self.counts
            .binary_search_by(|(known, _)| known.as_ref().cmp(code))
            .map_or(0, |place| self.counts[place].1)
    }

    /// Codes and counts, by code.
    pub fn each(&self) -> impl Iterator<Item = (&str, u64)> {
        self.counts
            .iter()
            .map(|(code, count)| (code.as_ref(), *count))
    }

    /// Codes and counts, the most frequent first.
    #[must_use]
    pub fn by_count(&self) -> Vec<(&str, u64)> {
        let mut sorted: Vec<_> = self.each().collect();
        sorted.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
        sorted
    }

    /// All counts together.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.counts.iter().map(|(_, count)| count).sum()
    }
}

impl Serialize for CodeTally {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.each())
    }
}

impl<'de> Deserialize<'de> for CodeTally {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let counts = BTreeMap::<String, u64>::deserialize(deserializer)?;
        let owned = counts
            .into_iter()
            .map(|(code, count)| (Cow::Owned(code), count));
        Ok(Self {
            counts: owned.collect(),
        })
    }
}
