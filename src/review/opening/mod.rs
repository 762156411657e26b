//! The points that are about one opening.

mod barrier;
mod heights;
mod levels;
mod load;
mod matching;
mod own;
mod slips;
mod wall;

use super::desk::Desk;
use super::{Finding, Point, Subject, Topic};
use crate::assess::{OpeningAssessment, Place};
use crate::proposal::ProposedOpening;
use crate::statement::nearest;
use matching::{is_second, left_out, name_of, ours_of, theirs_of};

/// An opening of ours and what the proposal makes of it.
pub(super) struct Pair<'a> {
    pub(super) subject: Subject,
    pub(super) ours: &'a OpeningAssessment<'a>,
    pub(super) place: &'a Place<'a>,
    pub(super) theirs: &'a ProposedOpening,
}

/// All of them: our openings in their order, then those that the site does not have.
pub(super) fn points(desk: &Desk<'_>) -> Vec<Point> {
    let mut points = Vec::new();
    for ours in &desk.assessment.openings {
        let Some(theirs) = theirs_of(desk, ours) else {
            points.extend(left_out(desk, ours));
            continue;
        };
        let pair = Pair {
            subject: Subject::Opening(ours.opening.id.clone()),
            ours,
            place: ours.place.as_deref().unwrap_or(&desk.assessment.place),
            theirs,
        };
        points.extend(levels::points(desk, &pair));
        points.extend(heights::points(desk, &pair));
        points.extend(own::points(desk, &pair.subject, theirs));
        points.extend(barrier::points(desk, &pair));
        points.extend(load::points(desk, &pair.subject, theirs, Some(&pair)));
        points.extend(wall::point(desk, &pair));
    }
    for (position, theirs) in desk.proposal.openings.iter().enumerate() {
        if ours_of(desk, theirs).is_none() || is_second(desk, theirs) {
            points.extend(unknown(desk, theirs, position));
        }
    }
    points
}

/// An opening that the site does not have: what its own figures allow to be checked.
fn unknown(desk: &Desk<'_>, theirs: &ProposedOpening, position: usize) -> Vec<Point> {
    let subject = Subject::Opening(name_of(theirs, position));
    let second = is_second(desk, theirs);
    let missing = match &theirs.id {
        Some(_) if second => {
            "an opening of this name in the site file that no other one of the proposal is"
        }
        Some(_) => "an opening of this name in the site file",
        None => "the id of the opening in the proposal",
    };
    let names = desk
        .assessment
        .openings
        .iter()
        .map(|ours| ours.opening.id.as_str());
    let meant = theirs.id.as_deref().filter(|_| !second);
    let meant = meant.and_then(|id| nearest(id, names));
    let found = meant.map(|name| Finding::NearestName {
        name: name.to_owned(),
    });
    let at = (&subject, Topic::UnknownOpening);
    let mut points = vec![
        Point::unchecked(
            at,
            None,
            None,
            vec![missing.to_owned()],
            "site file, [[opening]]",
        )
        .with(found),
    ];
    points.extend(own::points(desk, &subject, theirs));
    points.extend(barrier::kit_height(desk, &subject, theirs, None));
    points.extend(load::points(desk, &subject, theirs, None));
    points
}
