//! How much depends on a building.

use crate::statement::Choice;

/// Risk category of a building, ASCE 7-16 table 1.5-1 (table number from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RiskCategory {
    /// Low risk to people: barns, minor storage.
    I,
    /// All others.
    II,
    /// Substantial risk: many people, utilities.
    III,
    /// Essential: hospitals, fire stations, shelters.
    IV,
}

impl Choice for RiskCategory {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("I", Self::I),
        ("II", Self::II),
        ("III", Self::III),
        ("IV", Self::IV),
    ];
}
