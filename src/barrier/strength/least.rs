//! The limits of a section, of which the least governs.

use super::{Capacity, StrengthBasis};
use crate::barrier::StatedBending;
use crate::quantity::unit::Moment;

/// The limits that a standard names, already divided by their safety.
pub(super) struct Limits<Value> {
    first: Limit<Value>,
    others: Vec<Limit<Value>>,
    not_checked: Vec<&'static str>,
}

/// One limit.
#[derive(Clone, Copy)]
pub(super) struct Limit<Value> {
    pub value: Value,
    pub name: &'static str,
    pub reference: &'static str,
}

impl<Value: Copy + PartialOrd> Limits<Value> {
    pub(super) const fn of(first: Limit<Value>) -> Self {
        Self {
            first,
            others: Vec::new(),
            not_checked: Vec::new(),
        }
    }

    pub(super) fn and(mut self, limit: Limit<Value>) -> Self {
        self.others.push(limit);
        self
    }

    pub(super) fn without(mut self, open: &'static str) -> Self {
        self.not_checked.push(open);
        self
    }

    pub(super) fn least(self) -> Capacity<Value> {
        let mut least = self.first;
        for limit in self.others {
            if limit.value < least.value {
                least = limit;
            }
        }
        Capacity {
            value: least.value,
            governed_by: least.name,
            reference: least.reference,
            not_checked: self.not_checked,
        }
    }
}

impl Limits<Moment> {
    /// Adds the moment that the maker states for this basis: a further limit, never a licence
    /// for more than the standard's. It covers what the properties do not tell.
    pub(super) fn with_maker(mut self, stated: &StatedBending, basis: StrengthBasis) -> Self {
        let (own, other) = match basis {
            StrengthBasis::Allowable => (stated.allowable_moment, stated.design_moment),
            StrengthBasis::Design => (stated.design_moment, stated.allowable_moment),
        };
        if let Some(value) = own {
            self.not_checked.clear();
            return self.and(Limit {
                value,
                name: "the maker's moment",
                reference: "stated in the kit",
            });
        }
        if other.is_some() {
            return self.without(
                "the maker's moment: it is stated for the other kind of loads (with or without factors)",
            );
        }
        self
    }
}
