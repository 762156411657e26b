//! Counts by key where nobody knows how many keys there will be.

use std::borrow::Borrow;
use std::collections::BTreeMap;
use std::ops::AddAssign;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Counts of the `N` keys that come first in their order; all others are summed.
///
/// Keeping the first keys, and not the most frequent, keeps it exact: a key that is among the
/// first `N` of a whole table is among the first `N` of every part of it, so its count never
/// went to the others, whatever the order of rows and parts.
///
/// ```
/// use sillmark::portfolio::summary::Bounded;
/// let mut counts = Bounded::<String, u64, 2>::default();
/// for key in ["C", "A", "C", "B"] {
///     counts.add(key, 1);
/// }
/// let kept: Vec<_> = counts.each().map(|(key, count)| (key.as_str(), *count)).collect();
/// assert_eq!((kept, counts.others()), (vec![("A", 1), ("B", 1)], &2));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bounded<K: Ord, V, const N: usize> {
    kept: BTreeMap<K, V>,
    others: V,
}

impl<K: Ord, V: Default, const N: usize> Default for Bounded<K, V, N> {
    fn default() -> Self {
        Self {
            kept: BTreeMap::new(),
            others: V::default(),
        }
    }
}

impl<K: Ord + Clone, V: AddAssign + Copy, const N: usize> Bounded<K, V, N> {
    /// Adds to the count of `key`.
    pub fn add<Q>(&mut self, key: &Q, more: V)
    where
        K: Borrow<Q>,
        Q: Ord + ToOwned<Owned = K> + ?Sized,
    {
        if let Some(count) = self.kept.get_mut(key) {
            *count += more;
        } else if self.kept.len() < N {
            self.kept.insert(key.to_owned(), more);
        } else if self
            .kept
            .last_key_value()
            .is_some_and(|(last, _)| key < last.borrow())
        {
            self.kept.insert(key.to_owned(), more);
            if let Some((_, dropped)) = self.kept.pop_last() {
                self.others += dropped;
            }
        } else {
            self.others += more;
        }
    }

    /// Adds the counts of another.
    pub fn merge(&mut self, other: &Self) {
        for (key, count) in &other.kept {
            self.add::<K>(key, *count);
        }
        self.others += other.others;
    }

    /// Keys and counts, by key.
    pub fn each(&self) -> impl Iterator<Item = (&K, &V)> {
        self.kept.iter()
    }

    /// The counts of all keys that are not kept.
    #[must_use]
    pub const fn others(&self) -> &V {
        &self.others
    }
}

impl<K: Ord + Serialize, V: Serialize, const N: usize> Serialize for Bounded<K, V, N> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        // Pairs, because a key need not be a text.
        let kept: Vec<_> = self.kept.iter().collect();
        (kept, &self.others).serialize(serializer)
    }
}

impl<'de, K, V, const N: usize> Deserialize<'de> for Bounded<K, V, N>
where
    K: Ord + Deserialize<'de>,
    V: Deserialize<'de>,
{
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (kept, others) = <(Vec<(K, V)>, V)>::deserialize(deserializer)?;
        Ok(Self {
            kept: kept.into_iter().collect(),
            others,
        })
    }
}
