//! What a building is used for, as far as rules ask.

use std::fmt;

use crate::statement::Choice;

/// The use of a building.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Occupancy {
    /// People live there.
    Residential,
    /// Shops, offices, workshops.
    Commercial,
    /// Hospitals, shelters, water works: what must go on working in a flood.
    Critical,
}

impl Choice for Occupancy {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("residential", Self::Residential),
        ("commercial", Self::Commercial),
        ("critical", Self::Critical),
    ];
}

impl fmt::Display for Occupancy {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(self.word())
    }
}
