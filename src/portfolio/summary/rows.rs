//! The whole summary.

use serde::{Deserialize, Serialize};

use super::bounded::Bounded;
use super::code_tally::CodeTally;
use super::height_bins::HeightBins;
use super::highest::Highest;
use super::lattice::Lattice;
use super::rounded::{at_most, chance, millionths};
use super::row::RowFigures;
use super::verdict_counts::VerdictCounts;
use crate::quantity::unit::meter;

/// What went by so far.
///
/// Written down it stays below 50 kB for a million rows.
///
/// ```
/// use sillmark::portfolio::summary::{RowFigures, Summary};
/// use sillmark::quantity::unit::{Length, meter};
/// use sillmark::verdict::Verdict;
/// let mut summary = Summary::default();
/// summary.add(&RowFigures {
///     id: "mill",
///     location: None,
///     verdict: Verdict::Protect,
///     zone: Some("AE"),
///     level_source: None,
///     protection_height: Some(Length::new::<meter>(0.6)),
///     chance_at_sill: None,
///     threshold_is_estimate: false,
///     reason: Some("sill-below"),
///     cautions: &["survey-sill"],
/// });
/// summary.reject("latitude", "not a number");
/// assert_eq!((summary.read(), summary.assessed(), summary.rejected()), (2, 1, 1));
/// assert_eq!(summary.highest_needs().rows()[0].id, "mill");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Summary {
    verdicts: VerdictCounts,
    rejected: u64,
    rejects: Bounded<RejectKind, u64, 40>,
    zones: Bounded<String, VerdictCounts, 64>,
    without_zone: VerdictCounts,
    level_sources: CodeTally,
    reasons: CodeTally,
    cautions: CodeTally,
    estimated_thresholds: u64,
    heights: HeightBins,
    needs: Highest,
    with_chance: u64,
    chances: Highest,
    lattice: Lattice,
}

/// What is wrong with a row.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct RejectKind {
    /// The field, as the table names it.
    pub field: String,
    /// What is wrong with it.
    pub problem: String,
}

impl Summary {
    /// Characters of a zone's code that are kept.
    pub const ZONE_LENGTH: usize = 40;
    /// Characters of a field's name that are kept.
    pub const FIELD_LENGTH: usize = 40;
    /// Characters of a problem that are kept.
    pub const PROBLEM_LENGTH: usize = 120;

    /// No rows, to go on after `earlier` rows of the same table: whatever those have made coarse
    /// is so from the start, as it is in the sum of both.
    pub(in crate::portfolio) fn after(earlier: &Self) -> Self {
        Self {
            lattice: Lattice::as_coarse_as(&earlier.lattice),
            ..Self::default()
        }
    }

    /// One more assessed row.
    pub fn add(&mut self, row: &RowFigures<'_>) {
        let verdict = row.verdict;
        self.verdicts.add(verdict);
        match row.zone {
            Some(code) => {
                let code = at_most(code, Self::ZONE_LENGTH);
                self.zones.add(code.as_ref(), VerdictCounts::from(verdict));
            }
            None => self.without_zone.add(verdict),
        }
        if let Some(source) = row.level_source {
            self.level_sources.add(source.code());
        }
        if let Some(reason) = row.reason {
            self.reasons.add(reason);
        }
        for caution in row.cautions {
            self.cautions.add(caution);
        }
        self.estimated_thresholds += u64::from(row.threshold_is_estimate);
        let height = row.protection_height.map(|height| height.get::<meter>());
        if let Some(metres) = height.filter(|metres| metres.is_finite()) {
            self.heights.add(metres, verdict);
            if metres > 0.0 {
                self.needs.add(row, millionths(metres));
            }
        }
        if let Some(at_sill) = row.chance_at_sill {
            self.with_chance += 1;
            self.chances.add(row, chance(at_sill.probability()));
        }
        if let Some(place) = row.location {
            self.lattice.add(place, verdict);
        }
    }

    /// One more row that could not be read: the field at fault and what is wrong with it.
    ///
    /// `problem` is to name a kind of problem, without the row's own value: only the first 40
    /// kinds, sorted by field and problem, are told apart.
    pub fn reject(&mut self, field: &str, problem: &str) {
        self.rejected += 1;
        let kind = RejectKind {
            field: at_most(field, Self::FIELD_LENGTH).into_owned(),
            problem: at_most(problem, Self::PROBLEM_LENGTH).into_owned(),
        };
        self.rejects.add(&kind, 1);
    }

    /// Adds the rows of another part of the same table.
    pub fn merge(&mut self, other: &Self) {
        self.verdicts += other.verdicts;
        self.rejected += other.rejected;
        self.rejects.merge(&other.rejects);
        self.zones.merge(&other.zones);
        self.without_zone += other.without_zone;
        self.level_sources.merge(&other.level_sources);
        self.reasons.merge(&other.reasons);
        self.cautions.merge(&other.cautions);
        self.estimated_thresholds += other.estimated_thresholds;
        self.heights.merge(&other.heights);
        self.needs.merge(&other.needs);
        self.with_chance += other.with_chance;
        self.chances.merge(&other.chances);
        self.lattice.merge(&other.lattice);
    }

    /// Rows of the table: assessed and rejected.
    #[must_use]
    pub fn read(&self) -> u64 {
        self.assessed() + self.rejected
    }

    /// Rows that have a verdict.
    #[must_use]
    pub fn assessed(&self) -> u64 {
        self.verdicts.total()
    }

    /// Rows that could not be read.
    #[must_use]
    pub const fn rejected(&self) -> u64 {
        self.rejected
    }

    /// What was wrong with the rejected rows.
    #[must_use]
    pub const fn rejects(&self) -> &Bounded<RejectKind, u64, 40> {
        &self.rejects
    }

    /// Assessed rows by verdict.
    #[must_use]
    pub const fn verdicts(&self) -> &VerdictCounts {
        &self.verdicts
    }

    /// Assessed rows by the code of their zone, and by verdict in each.
    #[must_use]
    pub const fn zones(&self) -> &Bounded<String, VerdictCounts, 64> {
        &self.zones
    }

    /// Assessed rows that no zone holds.
    #[must_use]
    pub const fn without_zone(&self) -> &VerdictCounts {
        &self.without_zone
    }

    /// Assessed rows by the code of the source of their flood level
    /// ([`LevelSource::code`](crate::level::LevelSource::code)).
    #[must_use]
    pub const fn level_sources(&self) -> &CodeTally {
        &self.level_sources
    }

    /// Assessed rows without a flood level.
    #[must_use]
    pub fn without_level(&self) -> u64 {
        self.assessed().saturating_sub(self.level_sources.total())
    }

    /// Assessed rows by the code of the reason that decided.
    #[must_use]
    pub const fn reasons(&self) -> &CodeTally {
        &self.reasons
    }

    /// Assessed rows by the codes of their cautions; a row may have several.
    #[must_use]
    pub const fn cautions(&self) -> &CodeTally {
        &self.cautions
    }

    /// Assessed rows whose threshold was estimated, not measured.
    #[must_use]
    pub const fn estimated_thresholds(&self) -> u64 {
        self.estimated_thresholds
    }

    /// Protection heights by size.
    #[must_use]
    pub const fn heights(&self) -> &HeightBins {
        &self.heights
    }

    /// Rows with the highest protection heights, in metres to a micrometre; rows with nothing
    /// to protect are not among them.
    #[must_use]
    pub const fn highest_needs(&self) -> &Highest {
        &self.needs
    }

    /// Assessed rows for which the yearly chance of water at the sill is known.
    #[must_use]
    pub const fn with_chance(&self) -> u64 {
        self.with_chance
    }

    /// Rows with the highest yearly chance of water at the sill, as fractions.
    #[must_use]
    pub const fn highest_chances(&self) -> &Highest {
        &self.chances
    }

    /// Where the rows are.
    #[must_use]
    pub const fn lattice(&self) -> &Lattice {
        &self.lattice
    }
}
