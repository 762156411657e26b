//! What a check asks for: load factors, how strength is taken, and the deflection limit.

use super::StrengthBasis;
use crate::quantity::Length;
use crate::statement::Citation;

/// What the checks of planks and posts ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Basis {
    /// Factor on the load of the water for strength; deflections have none.
    pub factor: f64,
    /// How strength is taken.
    pub strength: StrengthBasis,
    /// The set of factors, in words.
    pub reference: String,
    /// The greatest deflection.
    pub deflection: DeflectionLimit,
}

/// The greatest deflection of a plank or post, as a part of its span.
#[derive(Clone, Debug, PartialEq)]
pub struct DeflectionLimit {
    /// 120 for L/120.
    pub part_of_span: f64,
    /// Where it stands; there is no limit in a code, so it is the user's or common practice.
    pub citation: Citation,
}

impl DeflectionLimit {
    /// The limit for a span; for a post that is free at its top, of its height.
    #[must_use]
    pub fn of(&self, span: Length) -> Length {
        span / self.part_of_span
    }
}
