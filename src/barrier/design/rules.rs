//! The rules that a barrier is designed by, from what was stated.

use super::DesignRules;
use crate::barrier::error::sets_for;
use crate::barrier::{DeflectionLimit, Kit, Practice};
use crate::load::{CombinationSet, LoadZone};
use crate::site::{CombinationChoice, LoadStatement};
use crate::statement::{Choice, Citation, Confidence, Stated, StatementError};

impl DesignRules {
    /// The rules that were stated; common practice and the first set of load factors that goes
    /// with the kit's material where nothing was.
    ///
    /// # Errors
    /// [`StatementError`] for a set of load factors that there is none of, or that does not go
    /// with a material of the kit.
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
            let stated = Stated::new("loads.combination", id.as_str(), place.clone());
            let Some(known) = shipped.iter().find(|set| set.id == *id) else {
                let ids: Vec<&str> = shipped.iter().map(|set| set.id.as_str()).collect();
                return Err(stated.refuse("there is no such set of load factors", ids.join(", ")));
            };
            goes_with(known, kit, &stated)?;
            Ok(known.clone())
        }
        None => {
            let own = kit.plank.material.standard.resistance();
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

/// Refuses a set for another kind of resistance than a material of the kit has, at the place
/// where it is named.
fn goes_with(set: &CombinationSet, kit: &Kit, stated: &Stated<'_>) -> Result<(), StatementError> {
    let posts = kit.posts.all().map(|(_, post)| &post.material);
    let mut materials = std::iter::once(&kit.plank.material).chain(posts);
    let other = materials.find(|material| {
        let own = material.standard.resistance();
        set.resistance.is_some_and(|asked| asked != own)
    });
    other.map_or(Ok(()), |material| {
        let own = material.standard.resistance();
        Err(stated.refuse(
            format!("it does not go with the kit's material {:?}", material.id),
            format!("a set for {}, such as {}", own.word(), sets_for(own)),
        ))
    })
}
