//! What a check asks for: load factors, how strength is taken, and the deflection limit.

use super::{Capacity, DesignError, Material, StrengthBasis};
use crate::load::{CombinationSet, FactorBasis, LoadZone};
use crate::quantity::Length;
use crate::statement::Citation;

/// What the checks of planks and posts of one material ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Basis {
    /// Factor on the load of the water for strength; deflections have none.
    pub factor: f64,
    /// How strength is taken.
    pub strength: StrengthBasis,
    /// The set of factors and where the factor stands.
    pub reference: String,
    /// The greatest deflection.
    pub deflection: DeflectionLimit,
}

/// The greatest deflection of a plank or post, as a part of its span.
#[derive(Clone, Debug, PartialEq)]
pub struct DeflectionLimit {
    /// 120 for L/120.
    pub parts: f64,
    /// Where it stands; no code limits it, so it is the user's or common practice.
    pub citation: Citation,
}

impl DeflectionLimit {
    /// The limit for a span; for a post that is free at its top, for its height.
    #[must_use]
    pub fn of(&self, span: Length) -> Length {
        span / self.parts
    }

    pub(super) fn reference(&self, of: &str) -> String {
        format!(
            "no load factor; limit {of}/{} ({})",
            self.parts, self.citation
        )
    }
}

impl Basis {
    /// The basis that a set of load factors gives for a material: allowable strengths where
    /// both the set and the material's standard have them, else strengths for factored loads.
    ///
    /// # Errors
    /// [`DesignError::OtherResistance`] where the set goes with another kind of resistance
    /// than the material's standard has.
    pub fn of(
        material: &Material,
        set: &CombinationSet,
        zone: LoadZone,
        deflection: &DeflectionLimit,
    ) -> Result<Self, DesignError> {
        let allowable_standard = material.standard.has_allowable();
        let own = material.standard.resistance();
        if set.resistance.is_some_and(|asked| asked != own) {
            return Err(DesignError::OtherResistance {
                set: set.id.clone(),
                material: material.id.clone(),
                own,
            });
        }
        let allowable = set
            .factor(zone, FactorBasis::Allowable)
            .filter(|_| allowable_standard);
        let (strength, (factor, citation)) = if let Some(found) = allowable {
            (StrengthBasis::Allowable, found)
        } else {
            let factors = set.factors(zone);
            let found = (factors.strength, &factors.strength_citation);
            (StrengthBasis::Design, found)
        };
        Ok(Self {
            factor,
            strength,
            reference: format!("load × {factor} by {} ({citation})", set.id),
            deflection: deflection.clone(),
        })
    }

    pub(super) fn strength_reference<Value>(&self, capacity: &Capacity<Value>) -> String {
        format!(
            "{}; {}: {}",
            self.reference, capacity.governed_by, capacity.reference
        )
    }
}
