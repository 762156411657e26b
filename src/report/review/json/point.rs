//! One point.

use schemars::JsonSchema;
use serde::Serialize;

use crate::quantity::UnitSystem;
use crate::report::review::words::half_width;
use crate::review::{
    Against, Figure, Finding, Outcome, OutcomeKind, Point, Proposed, Size, Subject, Tolerance,
};

/// One comparison.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonPoint {
    /// Name of the opening; null for the building.
    opening: Option<String>,
    /// What is compared; stable over versions.
    topic: String,
    /// The topic in words.
    title: String,
    outcome: JsonOutcome,
    /// How far it lies on either side of ours; null where it holds or is no number.
    by: Option<JsonFigure>,
    /// What is missing for a comparison.
    missing: Vec<String>,
    /// What the proposed figure is held against; null where there is none.
    ours: Option<JsonFigure>,
    /// Whether `ours` is a figure of ours, what the proposal's own figures come to, or a limit.
    against: JsonAgainst,
    /// The proposed figure; null where there is none.
    proposed: Option<JsonProposed>,
    /// How far the two may lie apart; null where nothing is compared, or both are exact.
    tolerance: Option<JsonTolerance>,
    /// What would explain a difference, and what to know: possibilities.
    findings: Vec<JsonFinding>,
    /// Where our figure or the limit stands.
    reference: String,
}

/// What a point comes to.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(super) enum JsonOutcome {
    /// It agrees with ours, or keeps within a limit.
    Holds,
    /// It lies on the safe side of ours.
    Exceeds,
    /// Something is missing on either side.
    CannotBeChecked,
    /// It lies on the unsafe side of ours, or over a limit.
    FallsShort,
}

/// What a proposed figure is held against.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonAgainst {
    /// A figure of the assessment.
    Ours,
    /// What the proposal's own figures come to.
    ItsOwnFigures,
    /// A limit of a rule, of the kit or of a wall.
    Limit,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonFigure {
    /// In coherent SI units; null where it has no number.
    value: Option<f64>,
    /// m, Pa, N/m, N·m/m, N, m³/s, m³/s/m or s; empty for a count, a chance and words.
    unit: String,
    /// In words, in the units of the run.
    text: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonProposed {
    /// As it is compared: on our datum, over the sill.
    figure: JsonFigure,
    /// What it is from: as it was written, or which figure of ours takes its place; empty where
    /// it follows from other figures of the proposal.
    written: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonTolerance {
    /// Half its width: two standard deviations and the bounds.
    half_width: JsonFigure,
    parts: Vec<JsonPart>,
    /// What belongs in it and is not known.
    not_known: Vec<String>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonPart {
    of: String,
    /// In the unit of the half width; null for a bound.
    standard_deviation: Option<f64>,
    /// In the unit of the half width; null for a standard deviation.
    at_most: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonFinding {
    /// Stable over versions.
    code: String,
    text: String,
    reference: String,
}

impl JsonPoint {
    pub(super) fn of(point: &Point, units: UnitSystem) -> Self {
        let figure = |figure: &Figure| JsonFigure::of(figure, units);
        let (by, missing) = match &point.outcome {
            Outcome::Holds => (None, Vec::new()),
            Outcome::Exceeds { by } | Outcome::FallsShort { by } => {
                (by.as_ref().map(figure), Vec::new())
            }
            Outcome::CannotBeChecked { missing } => (None, missing.clone()),
        };
        Self {
            opening: match &point.subject {
                Subject::Site => None,
                Subject::Opening(id) => Some(id.clone()),
            },
            topic: point.topic.code().to_owned(),
            title: point.topic.title().to_owned(),
            outcome: point.outcome.kind().into(),
            by,
            missing,
            ours: point.ours.as_ref().map(figure),
            against: match point.topic.against() {
                Against::Ours => JsonAgainst::Ours,
                Against::ItsOwnFigures => JsonAgainst::ItsOwnFigures,
                Against::Limit => JsonAgainst::Limit,
            },
            proposed: point
                .theirs
                .as_ref()
                .map(|theirs| JsonProposed::of(theirs, units)),
            tolerance: point
                .tolerance
                .as_ref()
                .and_then(|tolerance| JsonTolerance::of(point, tolerance, units)),
            findings: point
                .findings
                .iter()
                .map(|finding| JsonFinding::of(finding, units))
                .collect(),
            reference: point.reference.clone(),
        }
    }
}

impl JsonFigure {
    fn of(figure: &Figure, units: UnitSystem) -> Self {
        let number = figure.in_si();
        Self {
            value: number.map(|(value, _)| significant(value)),
            unit: number.map_or("", |(_, unit)| unit).to_owned(),
            text: figure.text(units),
        }
    }
}

impl JsonProposed {
    fn of(proposed: &Proposed, units: UnitSystem) -> Self {
        Self {
            figure: JsonFigure::of(&proposed.figure, units),
            written: proposed.written.clone(),
        }
    }
}

impl JsonTolerance {
    fn of(point: &Point, tolerance: &Tolerance, units: UnitSystem) -> Option<Self> {
        let width = half_width(point, tolerance)?;
        let not_known = tolerance.not_known.iter();
        Some(Self {
            half_width: JsonFigure::of(&width, units),
            parts: tolerance
                .parts
                .iter()
                .map(|part| {
                    let (standard_deviation, at_most) = match part.size {
                        Size::Deviation(sd) => (Some(significant(sd)), None),
                        Size::AtMost(bound) => (None, Some(significant(bound))),
                    };
                    JsonPart {
                        of: part.of.words().to_owned(),
                        standard_deviation,
                        at_most,
                    }
                })
                .collect(),
            not_known: not_known.map(|of| of.words().to_owned()).collect(),
        })
    }
}

impl JsonFinding {
    fn of(finding: &Finding, units: UnitSystem) -> Self {
        Self {
            code: finding.code().to_owned(),
            text: finding.text(units),
            reference: finding.reference(),
        }
    }
}

impl From<OutcomeKind> for JsonOutcome {
    fn from(kind: OutcomeKind) -> Self {
        match kind {
            OutcomeKind::Holds => Self::Holds,
            OutcomeKind::Exceeds => Self::Exceeds,
            OutcomeKind::CannotBeChecked => Self::CannotBeChecked,
            OutcomeKind::FallsShort => Self::FallsShort,
        }
    }
}

/// To nine digits: metres and thousandths of a litre an hour stand side by side here, and the
/// last binary digits differ from machine to machine.
pub(super) fn significant(number: f64) -> f64 {
    if number == 0.0 || !number.is_finite() {
        return 0.0;
    }
    format!("{number:.8e}").parse().unwrap_or(number)
}
