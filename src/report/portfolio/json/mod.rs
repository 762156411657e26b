//! The summary as JSON, schema 1: metres and fractions, with the unit in each name.
//!
//! The published JSON Schema is `data/schema/portfolio-summary-1.json`;
//! [`portfolio_summary_schema`] makes it.

mod parts;
mod run;

use schemars::JsonSchema;
use serde::Serialize;

use self::parts::{
    JsonChance, JsonCode, JsonCountedCaution, JsonHeights, JsonMap, JsonNeed, JsonReject,
    JsonVerdicts, JsonZoneCount,
};
use self::run::JsonRun;
use super::cautions::{counted, standing};
use super::run_facts::RunFacts;
use crate::portfolio::summary::Summary;
use crate::verdict::CautionTexts;

/// What was counted while the rows of a portfolio went by.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(title = "sillmark portfolio summary", deny_unknown_fields)]
pub struct JsonPortfolioSummary {
    /// Version of this schema.
    schema: u32,
    /// The program that wrote it.
    software: String,
    run: JsonRun,
    /// Rows of the table: assessed and rejected.
    rows_read: u64,
    /// Rows with a verdict.
    rows_assessed: u64,
    /// Rows that could not be read; they are in no figure below but `rejects`.
    rows_rejected: u64,
    /// Assessed rows by verdict. No verdict means that a building is free of risk.
    verdicts: JsonVerdicts,
    /// Assessed rows whose threshold was estimated, not measured.
    estimated_thresholds: u64,
    /// Assessed rows by zone, by code.
    zones: Vec<JsonZoneCount>,
    /// Rows in zones that are not listed, because there are too many.
    further_zones: JsonVerdicts,
    /// Rows that no zone holds.
    without_zone: JsonVerdicts,
    /// Rows by the source of their flood level, the most frequent first.
    level_sources: Vec<JsonCode>,
    /// Rows without a flood level.
    without_level: u64,
    /// Rows by the reason that decided, the most frequent first.
    reasons: Vec<JsonCode>,
    /// Protection heights in steps, from the lowest to the highest that occurs.
    protection_heights: Vec<JsonHeights>,
    /// The rows with the highest protection heights, the highest first.
    highest_needs: Vec<JsonNeed>,
    /// Rows for which the yearly chance of water at the sill is known.
    rows_with_chance: u64,
    /// The rows with the highest yearly chance of water at the sill, the highest first.
    highest_chances: Vec<JsonChance>,
    map: JsonMap,
    /// What is wrong with rejected rows, by field and problem.
    rejects: Vec<JsonReject>,
    /// Rejected rows with problems that are not listed, because there are too many.
    further_rejects: u64,
    /// Cautions that hold for every row.
    standing_cautions: Vec<JsonCountedCaution>,
    /// The other cautions, the most frequent first; a row may have several.
    cautions: Vec<JsonCountedCaution>,
}

/// The summary as indented JSON with a line break at its end.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn json(
    summary: &Summary,
    run: &RunFacts,
    texts: &CautionTexts,
) -> Result<String, serde_json::Error> {
    let report = JsonPortfolioSummary::of(summary, run, texts);
    let mut text = serde_json::to_string_pretty(&report)?;
    text.push('\n');
    Ok(text)
}

/// The JSON Schema of [`JsonPortfolioSummary`], indented.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn portfolio_summary_schema() -> Result<String, serde_json::Error> {
    let schema = schemars::schema_for!(JsonPortfolioSummary);
    let mut text = serde_json::to_string_pretty(&schema)?;
    text.push('\n');
    Ok(text)
}

impl JsonPortfolioSummary {
    /// The summary of a run.
    #[must_use]
    pub fn of(summary: &Summary, run: &RunFacts, texts: &CautionTexts) -> Self {
        let rejects = summary.rejects();
        Self {
            schema: 1,
            software: format!("sillmark {}", run.version),
            run: JsonRun::of(run),
            rows_read: summary.read(),
            rows_assessed: summary.assessed(),
            rows_rejected: summary.rejected(),
            verdicts: summary.verdicts().into(),
            estimated_thresholds: summary.estimated_thresholds(),
            zones: summary.zones().each().map(JsonZoneCount::of).collect(),
            further_zones: summary.zones().others().into(),
            without_zone: summary.without_zone().into(),
            level_sources: JsonCode::all(summary.level_sources()),
            without_level: summary.without_level(),
            reasons: JsonCode::all(summary.reasons()),
            protection_heights: summary.heights().each().map(JsonHeights::of).collect(),
            highest_needs: summary
                .highest_needs()
                .rows()
                .iter()
                .map(JsonNeed::of)
                .collect(),
            rows_with_chance: summary.with_chance(),
            highest_chances: summary
                .highest_chances()
                .rows()
                .iter()
                .map(JsonChance::of)
                .collect(),
            map: JsonMap::of(summary.lattice()),
            rejects: rejects.each().map(JsonReject::of).collect(),
            further_rejects: *rejects.others(),
            standing_cautions: JsonCountedCaution::all(standing(summary, run, texts)),
            cautions: JsonCountedCaution::all(counted(summary, texts)),
        }
    }
}
