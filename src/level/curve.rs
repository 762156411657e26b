//! Levels of several floods at a place as one curve.

use super::{Candidate, LevelSource};
use crate::quantity::AnnualChance;
use crate::risk::{ChanceLevel, INTERPOLATION, StageChance};

/// A stage–chance curve with the sources of its points.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The curve.
    pub stages: StageChance,
    /// The source with the least authority among its points.
    pub source: LevelSource,
    /// Where the points stand.
    pub reference: String,
}

/// The curve of the candidates: for each flood the one with the most authority. None where
/// fewer than two floods have a level, or where a rarer flood lies lower than a more frequent
/// one, which is remarked.
pub(super) fn of(candidates: &[Candidate], remarks: &mut Vec<String>) -> Option<Curve> {
    if candidates.len() < 2 {
        return None;
    }
    let mut ranked: Vec<&Candidate> = candidates.iter().collect();
    ranked.sort_by_key(|candidate| candidate.source);
    let mut points: Vec<&Candidate> = Vec::new();
    for candidate in ranked {
        if points
            .iter()
            .all(|point| !point.chance.same_event(candidate.chance))
        {
            points.push(candidate);
        }
    }
    if points.len() < 2 {
        return None;
    }
    let levels = points.iter().map(|point| ChanceLevel {
        chance: point.chance,
        elevation: point.elevation,
        sd: point.sd,
    });
    match StageChance::new(levels) {
        Ok(stages) => Some(Curve {
            stages,
            source: points.iter().map(|point| point.source).max()?,
            reference: points
                .iter()
                .map(|point| point.reference.as_str())
                .collect::<Vec<_>>()
                .join("; "),
        }),
        Err(error) => {
            remarks.push(format!(
                "the levels of several floods make no curve: {error}"
            ));
            None
        }
    }
}

impl Curve {
    /// The level of an event that no source has, read between two that have one; none beyond
    /// the rarest or the most frequent of them.
    pub(super) fn candidate(&self, event: AnnualChance) -> Option<Candidate> {
        let found = self.stages.level_at(event).ok()?;
        Some(Candidate {
            source: self.source,
            elevation: found.elevation,
            sd: found.sd,
            chance: event,
            how: format!("{}; {INTERPOLATION}", found.from),
            reference: self.reference.clone(),
        })
    }
}
