//! A set of load factors.

use super::Combination;
use crate::statement::{Choice, Citation, Document, StatementError};

/// Which flood zones a factor holds for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadZone {
    /// Zone V and Coastal A, where waves break.
    Coastal,
    /// All others.
    Other,
}

impl Choice for LoadZone {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("coastal", Self::Coastal), ("other", Self::Other)];
}

/// What the factored load is compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FactorBasis {
    /// Allowable stresses: the safety lies mainly in the resistance.
    Allowable,
    /// Design strengths: the safety lies in load and resistance.
    Strength,
}

impl Choice for FactorBasis {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("allowable", Self::Allowable), ("strength", Self::Strength)];
}

/// The kind of resistance that a set of load factors goes with. Loads of one kind on
/// resistances of the other prove nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ResistanceBasis {
    /// Safety factors Ω on the resistance with allowable stresses, resistance factors φ with
    /// design strengths, as in the United States.
    SafetyAndResistanceFactors,
    /// Partial factors of the material, as in the Eurocodes.
    PartialFactors,
}

impl Choice for ResistanceBasis {
    const CHOICES: &'static [(&'static str, Self)] = &[
        (
            "safety and resistance factors",
            Self::SafetyAndResistanceFactors,
        ),
        ("partial factors", Self::PartialFactors),
    ];
}

/// The factors on the load of the water in one kind of zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Factors {
    /// With allowable stresses; `None` where the code has none.
    pub allowable: Option<f64>,
    /// Where that stands.
    pub allowable_citation: Option<Citation>,
    /// With design strengths.
    pub strength: f64,
    /// Where that stands.
    pub strength_citation: Citation,
}

/// A set of load factors, of `data/combinations.toml` or stated.
#[derive(Clone, Debug, PartialEq)]
pub struct CombinationSet {
    /// Name on the command line, without spaces.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// What to know before using it.
    pub note: Option<String>,
    /// Where the set as a whole stands.
    pub citation: Citation,
    /// The resistance it goes with; `None` where the user did not say.
    pub resistance: Option<ResistanceBasis>,
    /// Zone V and Coastal A.
    pub coastal: Factors,
    /// All other zones.
    pub other: Factors,
    /// Whole combinations with other loads; none where the set is for water alone.
    pub combinations: Vec<Combination>,
}

const COMBINATIONS: &str = include_str!("../../../data/combinations.toml");

impl CombinationSet {
    /// The id of the set that is used where the user names none.
    pub const DEFAULT: &'static str = "us-full-water";

    /// All sets of `data/combinations.toml`, in its order.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    ///
    /// ```
    /// use sillmark::load::{CombinationSet, FactorBasis, LoadZone};
    /// let sets = CombinationSet::shipped()?;
    /// let set = sets.iter().find(|set| set.id == CombinationSet::DEFAULT).unwrap();
    /// let (factor, citation) = set.factor(LoadZone::Other, FactorBasis::Allowable).unwrap();
    /// assert_eq!(factor, 1.0);
    /// assert_eq!(citation.confidence.to_string(), "common practice, no source");
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn shipped() -> Result<Vec<Self>, StatementError> {
        let document = Document::parse("data/combinations.toml", COMBINATIONS)?;
        document.root().allow(&["set"])?;
        let sets = document.root().tables("set")?;
        sets.iter().map(Self::read).collect()
    }

    /// The factors in a zone.
    #[must_use]
    pub const fn factors(&self, zone: LoadZone) -> &Factors {
        match zone {
            LoadZone::Coastal => &self.coastal,
            LoadZone::Other => &self.other,
        }
    }

    /// The factor on the load of the water, and where it stands; `None` where the set has
    /// none on that basis.
    #[must_use]
    pub fn factor(&self, zone: LoadZone, basis: FactorBasis) -> Option<(f64, &Citation)> {
        let factors = self.factors(zone);
        match basis {
            FactorBasis::Allowable => factors.allowable.zip(factors.allowable_citation.as_ref()),
            FactorBasis::Strength => Some((factors.strength, &factors.strength_citation)),
        }
    }

    /// The whole combinations in a zone on one basis.
    pub fn combinations(
        &self,
        zone: LoadZone,
        basis: FactorBasis,
    ) -> impl Iterator<Item = &Combination> {
        self.combinations
            .iter()
            .filter(move |each| each.basis == basis && each.zone.is_none_or(|only| only == zone))
    }
}
