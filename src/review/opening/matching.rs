//! Which opening of the proposal is which of ours.

use crate::assess::OpeningAssessment;
use crate::proposal::ProposedOpening;
use crate::quantity::Length;
use crate::quantity::unit::meter;
use crate::review::desk::Desk;
use crate::review::{Contribution, point::Proposed};
use crate::review::{Figure, Finding, Outcome, Point, Subject, Tolerance, Topic};
use crate::verdict::Verdict;

/// Names are the same but for case and outer spaces.
fn same(one: &str, other: &str) -> bool {
    let plain = |name: &str| name.trim().to_lowercase();
    plain(one) == plain(other)
}

/// What the proposal has for an opening of ours: of several names that differ in case alone,
/// the one that is written alike, else the first.
pub(super) fn theirs_of<'a>(
    desk: &Desk<'a>,
    ours: &OpeningAssessment<'_>,
) -> Option<&'a ProposedOpening> {
    let id = &ours.opening.id;
    let of_ours = |theirs: &&ProposedOpening| {
        ours_of(desk, theirs).is_some_and(|found| found.opening.id == *id)
    };
    let all = || desk.proposal.openings.iter().filter(of_ours);
    let alike = all().find(|theirs| theirs.id.as_ref() == Some(id));
    alike.or_else(|| all().next())
}

/// The opening of ours that one of the proposal is: the one that is written alike, else the
/// first that differs in case alone.
pub(super) fn ours_of<'a>(
    desk: &Desk<'a>,
    theirs: &ProposedOpening,
) -> Option<&'a OpeningAssessment<'a>> {
    let id = theirs.id.as_deref()?;
    let openings = &desk.assessment.openings;
    let alike = openings.iter().find(|ours| ours.opening.id == id);
    alike.or_else(|| openings.iter().find(|ours| same(id, &ours.opening.id)))
}

/// Whether what is compared with our opening is another one of the proposal.
pub(super) fn is_second(desk: &Desk<'_>, theirs: &ProposedOpening) -> bool {
    ours_of(desk, theirs)
        .and_then(|ours| theirs_of(desk, ours))
        .is_some_and(|first| first.id != theirs.id)
}

/// Its name, or its place in the proposal where it has none.
pub(super) fn name_of(theirs: &ProposedOpening, position: usize) -> String {
    match &theirs.id {
        Some(id) => id.clone(),
        None => format!("opening {} of the proposal", position + 1),
    }
}

/// An opening of ours that the proposal does not name: nothing is missing where its sill lies
/// high enough.
pub(super) fn left_out(desk: &Desk<'_>, ours: &OpeningAssessment<'_>) -> Option<Point> {
    let subject = Subject::Opening(ours.opening.id.clone());
    let reference = "our schedule of openings";
    if ours.verdict == Verdict::Above {
        return None;
    }
    let unchecked = |missing| {
        let at = (&subject, Topic::LeftOut);
        let figure = ours.protection_height.map(Figure::Height);
        Some(Point::unchecked(at, figure, None, missing, reference))
    };
    if ours.verdict == Verdict::Unresolved {
        let why = ours.reasons.first().map(|reason| reason.text(desk.units()));
        return unchecked(vec![format!(
            "an answer of ours: {}",
            why.unwrap_or_default()
        )]);
    }
    let height = ours.protection_height?;
    // A proposal without any opening leaves none out: it is about something else.
    if desk.proposal.openings.is_empty() {
        return unchecked(vec!["[[opening]] in the proposal".to_owned()]);
    }
    let place = ours.place.as_deref().unwrap_or(&desk.assessment.place);
    let tolerance = Tolerance::default()
        .and(Contribution::OurLevel, desk.design_sd(place))
        .and(Contribution::OurSill, desk.sill_sd());
    let within = tolerance.takes(height.value, 0.0);
    let uncertain = within.then(|| Finding::PerhapsAbove {
        by: height,
        tolerance: Length::new::<meter>(tolerance.half_width()),
    });
    let outcome = Outcome::FallsShort {
        by: Some(Figure::Height(height)),
    };
    Some(Point {
        ours: Some(Figure::Height(height)),
        theirs: Some(Proposed::follows(Figure::Words("no barrier".to_owned()))),
        tolerance: Some(tolerance),
        ..Point::bare(&subject, Topic::LeftOut, outcome, reference)
            .with([Finding::NoBarrierProposed])
            .with(uncertain)
    })
}
