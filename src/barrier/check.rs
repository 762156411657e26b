//! One check of a part: what it has to carry beside what it can.

use crate::quantity::unit::{Force, Length, Moment};
use crate::statement::Choice;

/// The water that a check is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadCase {
    /// Water at the design level.
    DesignLevel,
    /// Water at the top of the barrier.
    Top,
}

impl Choice for LoadCase {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("water at the design level", Self::DesignLevel),
        ("water at the top of the barrier", Self::Top),
    ];
}

/// A demand or a capacity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A bending moment.
    Moment(Moment),
    /// A shear, a tension or a compression.
    Force(Force),
    /// A deflection.
    Deflection(Length),
}

impl Amount {
    /// The figure in newtons and metres.
    #[must_use]
    pub fn in_si(self) -> f64 {
        match self {
            Self::Moment(moment) => moment.value,
            Self::Force(force) => force.value,
            Self::Deflection(length) => length.value,
        }
    }
}

/// What a part has to carry, with all load factors, beside what it can.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// The part: `plank 1`, `intermediate post`.
    pub part: String,
    /// `bending`, `shear`, `deflection`, or an anchor's mode of failure.
    pub what: &'static str,
    /// The water it is for.
    pub case: LoadCase,
    /// What has to be carried.
    pub demand: Amount,
    /// What can be.
    pub capacity: Amount,
    /// How both come about, with their clauses.
    pub reference: String,
}

/// A demand and a capacity that come out of the same figures by two ways may differ in the
/// last binary digits.
const ROUNDING: f64 = 1e-9;

impl Check {
    /// Demand over capacity.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        ratio(self.demand.in_si(), self.capacity.in_si())
    }

    /// Whether the part carries it.
    #[must_use]
    pub fn holds(&self) -> bool {
        Self::within(self.demand.in_si(), self.capacity.in_si())
    }

    /// Whether a demand is within a capacity, both in the same unit.
    pub(super) fn within(demand: f64, capacity: f64) -> bool {
        ratio(demand, capacity) <= 1.0 + ROUNDING
    }
}

fn ratio(demand: f64, capacity: f64) -> f64 {
    if capacity > 0.0 {
        demand / capacity
    } else if demand > 0.0 {
        f64::INFINITY
    } else {
        0.0
    }
}

/// The check nearest to its capacity, or furthest beyond.
#[must_use]
pub fn governing<'checks>(
    checks: impl IntoIterator<Item = &'checks Check>,
) -> Option<&'checks Check> {
    checks
        .into_iter()
        .max_by(|one, other| one.ratio().total_cmp(&other.ratio()))
}
