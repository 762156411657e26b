//! One point of a review.

use super::outcome::{Sense, compare};
use super::{Figure, Finding, Outcome, Tolerance, Topic};
use crate::statement::Written;

/// What a point is about.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Subject {
    /// The building.
    Site,
    /// An opening, by its name.
    Opening(String),
}

/// One comparison: ours, theirs, what became of it, and what may explain a difference.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// What it is about.
    pub subject: Subject,
    /// What is compared.
    pub topic: Topic,
    /// What it comes to.
    pub outcome: Outcome,
    /// Our figure; a limit where the topic is one.
    pub ours: Option<Figure>,
    /// The proposed figure.
    pub theirs: Option<Proposed>,
    /// How far the two may lie apart; `None` where both are exact or nothing is compared.
    pub tolerance: Option<Tolerance>,
    /// What may explain a difference, and what to know of it: possibilities, all that fit.
    pub findings: Vec<Finding>,
    /// Where our figure or the limit stands: clause, rule or data file.
    pub reference: String,
}

/// A proposed figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposed {
    /// As it is compared: on our datum, over the sill.
    pub figure: Figure,
    /// What it is from: the text as it was written, with what was made of it, or a figure of
    /// ours that takes its place; empty where it follows from other figures of the proposal.
    pub written: String,
}

impl Proposed {
    /// A figure as it was written.
    pub(super) fn of<Value>(figure: Figure, written: &Written<Value>) -> Self {
        Self {
            figure,
            written: written.text.clone(),
        }
    }

    /// A figure of ours that takes the place of one that is not proposed.
    pub(super) fn ours(figure: Figure) -> Self {
        Self {
            figure,
            written: "ours, as none is proposed".to_owned(),
        }
    }

    /// A figure that is not written but follows.
    pub(super) const fn follows(figure: Figure) -> Self {
        Self {
            figure,
            written: String::new(),
        }
    }
}

impl Point {
    /// A comparison of two figures of one kind.
    pub(super) fn compared(
        (subject, topic): (&Subject, Topic),
        ours: Figure,
        theirs: Proposed,
        tolerance: Tolerance,
        sense: Sense,
        reference: impl Into<String>,
    ) -> Self {
        Self {
            outcome: compare(&ours, &theirs.figure, &tolerance, sense),
            tolerance: (tolerance != Tolerance::default()).then_some(tolerance),
            ours: Some(ours),
            theirs: Some(theirs),
            ..Self::bare(subject, topic, Outcome::Holds, reference)
        }
    }

    /// A point that something is missing for.
    pub(super) fn unchecked(
        (subject, topic): (&Subject, Topic),
        ours: Option<Figure>,
        theirs: Option<Proposed>,
        missing: Vec<String>,
        reference: impl Into<String>,
    ) -> Self {
        Self {
            ours,
            theirs,
            ..Self::bare(
                subject,
                topic,
                Outcome::CannotBeChecked { missing },
                reference,
            )
        }
    }

    /// A point with its outcome alone.
    pub(super) fn bare(
        subject: &Subject,
        topic: Topic,
        outcome: Outcome,
        reference: impl Into<String>,
    ) -> Self {
        Self {
            subject: subject.clone(),
            topic,
            outcome,
            ours: None,
            theirs: None,
            tolerance: None,
            findings: Vec::new(),
            reference: reference.into(),
        }
    }

    /// The same with findings.
    pub(super) fn with(mut self, findings: impl IntoIterator<Item = Finding>) -> Self {
        self.findings.extend(findings);
        self
    }

    /// Proposed figure less ours, in coherent SI units, where both lie farther apart than the
    /// tolerance.
    pub(super) fn difference(&self) -> Option<f64> {
        let (own, _) = self.ours.as_ref()?.in_si()?;
        let (their, _) = self.theirs.as_ref()?.figure.in_si()?;
        let tolerance = self.tolerance.clone().unwrap_or_default();
        (!tolerance.takes(own, their)).then_some(their - own)
    }
}
