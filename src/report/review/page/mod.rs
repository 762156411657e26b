//! The review as a page: one file of HTML that needs nothing beside it.

use askama::Template;

use super::words::{
    by_subject, headline, ours, outcome, proposal, shifts, shortfalls, subject, theirs, tolerance,
};
use crate::quantity::UnitSystem;
use crate::report::words::fetched_lines;
use crate::review::{OutcomeKind, Point, Review};

/// The review as one HTML file; no scripts, and nothing is loaded from elsewhere.
///
/// # Errors
/// [`askama::Error`], which does not happen for this template.
pub fn page(review: &Review<'_>) -> Result<String, askama::Error> {
    Page::of(review).render()
}

#[derive(Template)]
#[template(path = "report/review/page/page.html")]
struct Page {
    site: String,
    proposal: String,
    source: Option<String>,
    headline: String,
    screening: &'static str,
    method: String,
    kinds: [(&'static str, &'static str); 4],
    overview: Vec<(String, [usize; 4])>,
    shortfalls: Vec<String>,
    subjects: Vec<Section>,
    shifts: Vec<String>,
    fetched: Vec<String>,
    version: &'static str,
}

/// The points of one subject.
struct Section {
    number: usize,
    title: String,
    rows: Vec<Row>,
}

/// A point as it stands in a table.
struct Row {
    title: &'static str,
    class: &'static str,
    outcome: String,
    ours: String,
    theirs: String,
    tolerance: String,
    findings: Vec<(String, String)>,
    reference: String,
}

impl Page {
    fn of(review: &Review<'_>) -> Self {
        let (assessment, method) = (review.assessment, review.assessment.method);
        let subjects = by_subject(review);
        Self {
            site: assessment.site.name.clone(),
            proposal: proposal(review),
            source: review.proposal.source.clone(),
            headline: headline(review),
            screening: Review::SCREENING,
            method: format!(
                "{} annual chance, {}, kit {}",
                method.event, method.rule.name, method.kit.name
            ),
            kinds: OutcomeKind::WORST_FIRST.map(|kind| (class(kind), kind.words())),
            overview: subjects
                .iter()
                .map(|(about, points)| (subject(about).to_owned(), counts(points)))
                .collect(),
            shortfalls: shortfalls(review),
            subjects: subjects
                .iter()
                .enumerate()
                .map(|(number, (about, points))| Section {
                    number,
                    title: subject(about).to_owned(),
                    rows: points
                        .iter()
                        .map(|point| Row::of(point, method.units))
                        .collect(),
                })
                .collect(),
            shifts: shifts(review),
            fetched: fetched_lines(&assessment.maps),
            version: env!("CARGO_PKG_VERSION"),
        }
    }
}

impl Row {
    fn of(point: &Point, units: UnitSystem) -> Self {
        let proposed = point.theirs.as_ref();
        Self {
            title: point.topic.title(),
            class: class(point.outcome.kind()),
            outcome: outcome(point, units),
            ours: ours(point, units).unwrap_or_default(),
            theirs: proposed.map_or_else(String::new, |proposed| theirs(proposed, units)),
            tolerance: tolerance(point, units).unwrap_or_default(),
            findings: point
                .findings
                .iter()
                .map(|finding| (finding.text(units), finding.reference()))
                .collect(),
            reference: point.reference.clone(),
        }
    }
}

/// The mark of an outcome; its word stands beside it always.
const fn class(kind: OutcomeKind) -> &'static str {
    match kind {
        OutcomeKind::FallsShort => "short",
        OutcomeKind::CannotBeChecked => "open",
        OutcomeKind::Exceeds => "over",
        OutcomeKind::Holds => "holds",
    }
}

fn counts(points: &[&Point]) -> [usize; 4] {
    OutcomeKind::WORST_FIRST.map(|kind| {
        let of_kind = points.iter().filter(|point| point.outcome.kind() == kind);
        of_kind.count()
    })
}
