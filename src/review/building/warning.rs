//! Warning and fitting.

use super::{SITE, not_stated};
use crate::barrier::{twelve_hour_citation, twelve_hours};
use crate::quantity::unit::Time;
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Point, Tolerance, Topic};
use crate::statement::Written;

const SITE_FILE: &str = "site file, [water] warning and [fitting]";

/// The warning that it counts on, how long it takes, and whether one is enough for the other.
pub(super) fn warning(desk: &Desk<'_>) -> Vec<Point> {
    let mut points = vec![counted_on(desk)];
    points.extend(fitting(desk));
    points.push(in_time(desk));
    points.extend(twelve(desk));
    points
}

fn time(written: &Written<Time>) -> Proposed {
    Proposed::of(Figure::Time(written.value), written)
}

fn digit(written: &Written<Time>) -> Tolerance {
    Tolerance::default().and(Contribution::LastDigit, Some(written.rounding_sd()))
}

fn site_warning(desk: &Desk<'_>) -> Option<Time> {
    desk.assessment.site.conditions.water.warning
}

/// The warning it counts on against the one at the site, which is not longer for it.
fn counted_on(desk: &Desk<'_>) -> Point {
    let at = (&SITE, Topic::Warning);
    let ours = site_warning(desk);
    let figure = ours.map(Figure::Time);
    match (&desk.proposal.warning, ours) {
        (None, _) => Point::unchecked(at, figure, None, not_stated("warning"), SITE_FILE),
        (Some(theirs), None) => Point::unchecked(
            at,
            None,
            Some(time(theirs)),
            vec!["the warning at the site ([water] warning in the site file)".to_owned()],
            SITE_FILE,
        ),
        (Some(theirs), Some(ours)) => Point::compared(
            at,
            Figure::Time(ours),
            time(theirs),
            digit(theirs),
            Sense::AtMost,
            SITE_FILE,
        ),
    }
}

fn our_fitting(desk: &Desk<'_>) -> Option<Time> {
    desk.assessment.behind.as_ref()?.fitting_time
}

/// The fitting against ours: a shorter time promises more than the pieces take.
fn fitting(desk: &Desk<'_>) -> Option<Point> {
    let at = (&SITE, Topic::FittingTime);
    let ours = our_fitting(desk);
    match (&desk.proposal.fitting_time, ours) {
        (None, None) => None,
        (None, Some(ours)) => Some(Point::unchecked(
            at,
            Some(Figure::Time(ours)),
            None,
            not_stated("fitting_time"),
            SITE_FILE,
        )),
        (Some(theirs), None) => Some(Point::unchecked(
            at,
            None,
            Some(time(theirs)),
            vec!["how long a piece takes to fit ([fitting] in the site file)".to_owned()],
            SITE_FILE,
        )),
        (Some(theirs), Some(ours)) => Some(Point::compared(
            at,
            Figure::Time(ours),
            time(theirs),
            digit(theirs),
            Sense::MoreIsSafer,
            SITE_FILE,
        )),
    }
}

/// The fitting, theirs where they state one, against the warning, the site's where it has one.
fn in_time(desk: &Desk<'_>) -> Point {
    let at = (&SITE, Topic::FittingInWarning);
    let reference = "the fitting has to end before the water";
    let takes = match &desk.proposal.fitting_time {
        Some(theirs) => Some(time(theirs)),
        None => our_fitting(desk).map(|ours| Proposed::ours(Figure::Time(ours))),
    };
    let theirs = desk.proposal.warning.as_ref().map(|written| written.value);
    let warning = site_warning(desk).or(theirs).map(Figure::Time);
    match (takes, warning) {
        (Some(takes), Some(warning)) => Point::compared(
            at,
            warning,
            takes,
            Tolerance::default(),
            Sense::AtMost,
            reference,
        ),
        (takes, warning) => {
            let mut missing = Vec::new();
            if takes.is_none() {
                missing.push(
                    "the time that the fitting takes (fitting_time, or [fitting] in the site file)"
                        .to_owned(),
                );
            }
            if warning.is_none() {
                missing.push("the time between the warning and the water (warning, or [water] warning in the site file)".to_owned());
            }
            Point::unchecked(at, warning, takes, missing, reference)
        }
    }
}

/// The warning at the site, theirs where none is stated, against the twelve hours.
fn twelve(desk: &Desk<'_>) -> Option<Point> {
    let theirs = desk.proposal.warning.as_ref();
    let proposed = match (site_warning(desk), theirs) {
        (Some(ours), None) => Proposed::ours(Figure::Time(ours)),
        // What counts is the warning that there is.
        (Some(ours), Some(_)) => Proposed {
            figure: Figure::Time(ours),
            written: "the warning of the site file".to_owned(),
        },
        (None, Some(theirs)) => time(theirs),
        (None, None) => return None,
    };
    Some(Point::compared(
        (&SITE, Topic::TwelveHours),
        Figure::Time(twelve_hours()),
        proposed,
        Tolerance::default(),
        Sense::AtLeast,
        twelve_hour_citation().to_string(),
    ))
}
