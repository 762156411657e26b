//! A level from one source, and the ranked list of them.

use super::LevelSource;
use crate::quantity::{AnnualChance, Elevation, Length};

/// What one source says the flood level is.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// The source.
    pub source: LevelSource,
    /// The level.
    pub elevation: Elevation,
    /// Its standard deviation, where one is known.
    pub sd: Option<Length>,
    /// The event.
    pub chance: AnnualChance,
    /// How it was read.
    pub how: String,
    /// Where it stands.
    pub reference: String,
}

/// The flood level at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct FloodLevel {
    /// The source with the highest authority: it decides.
    pub decided: Candidate,
    /// The other sources that have a level, in order of authority.
    pub others: Vec<Candidate>,
}

impl FloodLevel {
    /// Ranks the candidates; `None` where there is none.
    pub(super) fn rank(mut candidates: Vec<Candidate>) -> Option<Self> {
        // Of one source the highest first: where zones overlap or meet, the worse one counts.
        // All stand on one datum here, so that the bare heights compare.
        let height = |candidate: &Candidate| candidate.elevation.height().value;
        candidates.sort_by(|one, two| {
            let by_authority = one.source.cmp(&two.source);
            by_authority.then_with(|| height(two).total_cmp(&height(one)))
        });
        let mut ranked = candidates.into_iter();
        Some(Self {
            decided: ranked.next()?,
            others: ranked.collect(),
        })
    }

    /// The other source that differs most from the deciding one, beyond twice their combined
    /// standard deviation; sources that state no deviation are held to a deviation of nothing.
    #[must_use]
    pub fn disagreement(&self) -> Option<(&Candidate, Length)> {
        self.others
            .iter()
            .filter_map(|other| {
                let difference = other.elevation.above(self.decided.elevation).ok()?.abs();
                let sd = |candidate: &Candidate| candidate.sd.map_or(0.0, |sd| sd.value);
                let combined = sd(other).hypot(sd(&self.decided));
                (difference.value > 2.0 * combined + ROUNDING_METRES).then_some((other, difference))
            })
            .max_by(|(_, one), (_, two)| one.value.total_cmp(&two.value))
    }
}

/// Levels that are equal but for binary digits do not differ.
const ROUNDING_METRES: f64 = 1e-6;
