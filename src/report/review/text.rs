//! The review for a terminal: what it comes to, then every point.

use super::words::{
    by_subject, headline, ours, outcome, plural, proposal, shifts, shortfalls, subject, theirs,
    tolerance,
};
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};
use crate::report::text::lay_out;
use crate::report::words::fetched_lines;
use crate::review::{Against, OutcomeKind, Point, Review};

/// The review as plain text, in lines of at most `columns`.
#[must_use]
pub fn text(review: &Review<'_>, columns: usize) -> String {
    let units = review.assessment.method.units;
    let mut page = Outline::default();
    page.paragraph(
        &format!(
            "{} against {}. {}",
            proposal(review),
            review.assessment.site.name,
            headline(review)
        ),
        "",
    );
    page.paragraph(&format!("{}.", Review::SCREENING), "");
    page.gap();
    page.table(overview(review));
    let shortfalls = shortfalls(review);
    if !shortfalls.is_empty() {
        page.heading("What falls short");
        for line in shortfalls {
            page.paragraph(&line, "- ");
        }
    }
    for (about, points) in by_subject(review) {
        page.heading(subject(about));
        for each in points {
            point(&mut page, each, units);
        }
    }
    let shifts = shifts(review);
    if !shifts.is_empty() {
        page.heading("Shifts between datums at the site");
        for shift in shifts {
            page.paragraph(&shift, "- ");
        }
    }
    let fetched = fetched_lines(&review.assessment.maps);
    if !fetched.is_empty() {
        page.heading("Read from services");
        for line in fetched {
            page.paragraph(&line, "- ");
        }
    }
    lay_out(&page, columns)
}

/// How many points of each subject came to what.
fn overview(review: &Review<'_>) -> Table {
    let kinds = OutcomeKind::WORST_FIRST;
    let header = std::iter::once("").chain(kinds.map(|kind| plural(kind, 2)));
    let mut table = Table::with_header(header);
    for (about, points) in by_subject(review) {
        let count = |kind| {
            let of_kind = points.iter().filter(|point| point.outcome.kind() == kind);
            of_kind.count().to_string()
        };
        let counts = kinds.map(count);
        table.add_row(std::iter::once(subject(about).to_owned()).chain(counts));
    }
    table.figures(1..kinds.len() + 1);
    table
}

fn point(page: &mut Outline, point: &Point, units: UnitSystem) {
    page.paragraph(
        &format!("{}: {}", point.topic.title(), outcome(point, units)),
        "- ",
    );
    let ours = ours(point, units).map(|figure| match point.topic.against() {
        Against::Ours => format!("ours {figure}"),
        _ => figure,
    });
    let proposed = point.theirs.as_ref();
    let proposed = proposed.map(|proposed| format!("proposed {}", theirs(proposed, units)));
    let figures: Vec<String> = [ours, proposed, tolerance(point, units)]
        .into_iter()
        .flatten()
        .collect();
    if !figures.is_empty() {
        page.paragraph(&figures.join("; "), "  ");
    }
    for finding in &point.findings {
        page.paragraph(&finding.text(units), "  > ");
    }
    if !point.reference.is_empty() {
        page.paragraph(&format!("[{}]", point.reference), "  ");
    }
}
