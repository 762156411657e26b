//! Points in words, which text and page share.

use crate::quantity::UnitSystem;
use crate::review::{
    Against, Figure, Outcome, OutcomeKind, Point, Proposed, Review, Size, Subject, Tolerance,
};

/// What the review comes to, in one sentence.
pub(super) fn headline(review: &Review<'_>) -> String {
    let counts = review.counts();
    let told = OutcomeKind::WORST_FIRST.map(|kind| (counts.of(kind), kind));
    let parts: Vec<String> = told
        .into_iter()
        .filter(|(number, _)| *number > 0)
        .map(|(number, kind)| format!("{number} {}", plural(kind, number)))
        .collect();
    let total = review.points.len();
    let points = if total == 1 { "point" } else { "points" };
    format!("Of {total} {points}, {}.", parts.join(", "))
}

/// What a number of points do.
pub(super) const fn plural(kind: OutcomeKind, number: usize) -> &'static str {
    match (kind, number) {
        (_, 1) | (OutcomeKind::CannotBeChecked, _) => kind.words(),
        (OutcomeKind::Holds, _) => "hold",
        (OutcomeKind::Exceeds, _) => "exceed",
        (OutcomeKind::FallsShort, _) => "fall short",
    }
}

/// The proposal, by its name where it has one.
pub(super) fn proposal(review: &Review<'_>) -> String {
    let proposal = review.proposal;
    match &proposal.name {
        Some(name) => format!("{name} ({})", proposal.file),
        None => proposal.file.clone(),
    }
}

/// What a point is about.
pub(super) fn subject(subject: &Subject) -> &str {
    match subject {
        Subject::Site => "The building",
        Subject::Opening(id) => id,
    }
}

/// The subjects in the order of the review, each with its points.
pub(super) fn by_subject<'a>(review: &'a Review<'_>) -> Vec<(&'a Subject, Vec<&'a Point>)> {
    let mut subjects: Vec<(&Subject, Vec<&Point>)> = Vec::new();
    for point in &review.points {
        match subjects
            .iter_mut()
            .find(|(known, _)| **known == point.subject)
        {
            Some((_, points)) => points.push(point),
            None => subjects.push((&point.subject, vec![point])),
        }
    }
    subjects
}

/// What falls short, for who reads no further: a line for each subject, in their order.
pub(super) fn shortfalls(review: &Review<'_>) -> Vec<String> {
    let units = review.assessment.method.units;
    let lines = by_subject(review)
        .into_iter()
        .filter_map(|(about, points)| {
            let short = points.iter().filter_map(|point| match &point.outcome {
                Outcome::FallsShort { by: Some(by) } => {
                    Some(format!("{} by {}", point.topic.title(), by.text(units)))
                }
                Outcome::FallsShort { by: None } => Some(point.topic.title().to_owned()),
                _ => None,
            });
            let short: Vec<String> = short.collect();
            (!short.is_empty()).then(|| format!("{}: {}", subject(about), short.join("; ")))
        });
    lines.collect()
}

/// What a point comes to, with its figure.
pub(super) fn outcome(point: &Point, units: UnitSystem) -> String {
    let word = point.outcome.kind().words();
    match &point.outcome {
        Outcome::Exceeds { by: Some(by) } | Outcome::FallsShort { by: Some(by) } => {
            format!("{word} by {}", by.text(units))
        }
        Outcome::CannotBeChecked { missing } if !missing.is_empty() => {
            format!("{word}; missing: {}", missing.join("; "))
        }
        _ => word.to_owned(),
    }
}

/// The proposed figure as it was written, which shows its last digit; where something was made
/// of it (another unit, another datum, another edge), as it is compared and what it is from.
pub(super) fn theirs(proposed: &Proposed, units: UnitSystem) -> String {
    let figure = proposed.figure.text(units);
    if proposed.written.is_empty() {
        figure
    } else if is_same(&figure, &proposed.written) {
        proposed.written.clone()
    } else {
        format!("{figure} (from {})", proposed.written)
    }
}

/// Whether two texts are one number in one unit: `3.00 ft` and `3 ft`.
fn is_same(one: &str, other: &str) -> bool {
    let parts = |text: &str| {
        let (number, unit) = text.split_once(' ')?;
        Some((number.parse::<f64>().ok()?, unit.trim().to_owned()))
    };
    one == other || parts(one).is_some_and(|one| parts(other) == Some(one))
}

/// The half width of a tolerance, as a figure of the kind that is compared.
pub(super) fn half_width(point: &Point, tolerance: &Tolerance) -> Option<Figure> {
    let kind = point.ours.as_ref()?;
    kind.difference(tolerance.half_width())
}

/// Our figure, or what else the proposed one is held against.
pub(super) fn ours(point: &Point, units: UnitSystem) -> Option<String> {
    let figure = point.ours.as_ref()?.text(units);
    Some(match point.topic.against() {
        Against::Ours => figure,
        other => format!("{} {figure}", other.words()),
    })
}

/// Parts below this part of a tolerance are not worth a word; the JSON has all.
const NEGLIGIBLE: f64 = 0.01;

/// The tolerance with what it is made of; `None` where it is too small to print.
pub(super) fn tolerance(point: &Point, units: UnitSystem) -> Option<String> {
    let tolerance = point.tolerance.as_ref()?;
    let half = half_width(point, tolerance)?;
    let (width, none) = (half.text(units), half.difference(0.0)?.text(units));
    let not_known: Vec<&str> = tolerance.not_known.iter().map(|of| of.words()).collect();
    if width == none && not_known.is_empty() {
        return None;
    }
    let least = NEGLIGIBLE * tolerance.half_width();
    let sizeable = tolerance.parts.iter().filter(|part| {
        let (Size::Deviation(size) | Size::AtMost(size)) = part.size;
        size > least
    });
    let parts: Vec<&str> = sizeable.map(|part| part.of.words()).collect();
    let mut text = format!("± {width}");
    if !parts.is_empty() {
        text = format!("{text} ({})", parts.join(", "));
    }
    if !not_known.is_empty() {
        text = format!(
            "{text}; not in it, because nobody says how well it is known: {}",
            not_known.join(", ")
        );
    }
    Some(text)
}

/// The shifts between datums that were at hand.
pub(super) fn shifts(review: &Review<'_>) -> Vec<String> {
    let units = review.assessment.method.units;
    let known = review.shifts.known.iter().map(|shift| {
        let sd = shift.sd.map_or_else(
            || "how well it is known is not stated".to_owned(),
            |sd| format!("± {}", units.height(sd * 2.0)),
        );
        format!(
            "{} to {}: {} ({sd}), {}",
            shift.from,
            shift.to,
            units.height(shift.shift),
            shift.source
        )
    });
    known.collect()
}
