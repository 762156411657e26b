//! The review as JSON, schema 1: coherent SI units, with the unit beside each number.
//!
//! The published JSON Schema is `data/schema/review-1.json`; [`review_schema`] makes it.

mod point;

use schemars::JsonSchema;
use serde::Serialize;

use self::point::{JsonOutcome, JsonPoint, significant};
use crate::review::{KnownShift, Review};

/// A proposal held against an assessment.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(title = "sillmark review", deny_unknown_fields)]
pub struct JsonReview {
    /// Version of this schema.
    schema: u32,
    /// The program that wrote it.
    software: String,
    /// Name of the building.
    site: String,
    /// Vertical datum of our elevations, and of proposed ones as they are compared.
    datum: String,
    proposal: JsonProposal,
    /// The worst that a point came to.
    worst: JsonOutcome,
    counts: JsonCounts,
    /// What has to be known of every review.
    note: String,
    /// Shifts between datums that were at hand at the site.
    shifts: Vec<JsonShift>,
    points: Vec<JsonPoint>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonProposal {
    /// Null where the proposal has no name.
    name: Option<String>,
    file: String,
    /// Where the proposal has its flood level from; null where it does not say.
    source: Option<String>,
}

/// How many points came to what.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonCounts {
    falls_short: usize,
    cannot_be_checked: usize,
    exceeds: usize,
    holds: usize,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonShift {
    from: String,
    to: String,
    /// Height on `to` less height on `from`.
    shift_m: f64,
    /// Standard deviation; null where it is not known.
    sd_m: Option<f64>,
    source: String,
}

/// The review as indented JSON with a line break at its end.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn json(review: &Review<'_>) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&JsonReview::of(review))?;
    text.push('\n');
    Ok(text)
}

/// The JSON Schema of [`JsonReview`], indented.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn review_schema() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schemars::schema_for!(JsonReview))?;
    text.push('\n');
    Ok(text)
}

impl JsonReview {
    /// The review of a proposal.
    #[must_use]
    pub fn of(review: &Review<'_>) -> Self {
        let (site, proposal) = (review.assessment.site, review.proposal);
        let counts = review.counts();
        let units = review.assessment.method.units;
        Self {
            schema: 1,
            software: concat!("sillmark ", env!("CARGO_PKG_VERSION")).to_owned(),
            site: site.name.clone(),
            datum: site.threshold.datum().to_string(),
            proposal: JsonProposal {
                name: proposal.name.clone(),
                file: proposal.file.clone(),
                source: proposal.source.clone(),
            },
            worst: review.worst().into(),
            counts: JsonCounts {
                falls_short: counts.falls_short,
                cannot_be_checked: counts.cannot_be_checked,
                exceeds: counts.exceeds,
                holds: counts.holds,
            },
            note: Review::SCREENING.to_owned(),
            shifts: review.shifts.known.iter().map(JsonShift::of).collect(),
            points: review
                .points
                .iter()
                .map(|point| JsonPoint::of(point, units))
                .collect(),
        }
    }
}

impl JsonShift {
    fn of(shift: &KnownShift) -> Self {
        Self {
            from: shift.from.to_string(),
            to: shift.to.to_string(),
            shift_m: significant(shift.shift.value),
            sd_m: shift.sd.map(|sd| significant(sd.value)),
            source: shift.source.clone(),
        }
    }
}
