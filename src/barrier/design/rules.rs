//! The rules that a barrier is designed by, from what was stated.

use super::DesignRules;
use crate::barrier::{DeflectionLimit, Kit, Practice};
use crate::load::{CombinationSet, LoadZone, ResistanceBasis};
use crate::site::{CombinationChoice, LoadStatement};
use crate::statement::{Citation, Confidence, Stated, StatementError};

impl DesignRules {
    /// The rules that were stated; common practice and the first set of load factors that goes
    /// with the kit's material where nothing was.
    ///
    /// # Errors
    /// [`StatementError`] for a set of load factors that there is none of.
    ///
    /// ```
    /// use sillmark::barrier::{DesignRules, Kit};
    /// use sillmark::load::LoadZone;
    /// use sillmark::site::LoadStatement;
    /// let rules = DesignRules::of(&Kit::demonstration()?, &LoadStatement::default(), LoadZone::Other)?;
    /// assert_eq!(rules.combination.id, "us-full-water");
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn of(kit: &Kit, stated: &LoadStatement, zone: LoadZone) -> Result<Self, StatementError> {
        let practice = Practice::shipped()?;
        let deflection = match stated.deflection {
            Some(part) => DeflectionLimit {
                parts: 1.0 / part.value,
                citation: Citation {
                    source: "as stated".to_owned(),
                    confidence: Confidence::Stated,
                },
            },
            None => practice.deflection.clone(),
        };
        Ok(Self {
            combination: combination(kit, stated.combination.as_ref())?,
            zone,
            deflection,
            practice,
        })
    }

    /// The same rules in another zone.
    #[must_use]
    pub fn in_zone(&self, zone: LoadZone) -> Self {
        Self {
            zone,
            ..self.clone()
        }
    }
}

fn combination(
    kit: &Kit,
    choice: Option<&CombinationChoice>,
) -> Result<CombinationSet, StatementError> {
    let shipped = CombinationSet::shipped()?;
    match choice {
        Some(CombinationChoice::Written(set)) => Ok(set.as_ref().clone()),
        Some(CombinationChoice::Named { id, place }) => {
            let known = shipped.iter().find(|set| set.id == *id);
            known.cloned().ok_or_else(|| {
                let ids: Vec<&str> = shipped.iter().map(|set| set.id.as_str()).collect();
                Stated::new("loads.combination", id.as_str(), place.clone())
                    .refuse("there is no such set of load factors", ids.join(", "))
            })
        }
        None => {
            let own = if kit.plank.material.standard.has_allowable() {
                ResistanceBasis::SafetyAndResistanceFactors
            } else {
                ResistanceBasis::PartialFactors
            };
            let fitting = shipped.iter().find(|set| set.resistance == Some(own));
            fitting.or(shipped.first()).cloned().ok_or_else(|| {
                Stated::new(
                    "set",
                    "",
                    crate::statement::Place::Option("data/combinations.toml".into()),
                )
                .refuse("there is none", "one [[set]] or more")
            })
        }
    }
}
