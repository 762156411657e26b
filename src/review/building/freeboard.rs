//! The freeboard.

use super::{SITE, not_stated};
use crate::quantity::Length;
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Finding, Point, Tolerance, Topic, Whose};

/// The proposed freeboard against the rule's. A freeboard is chosen, not measured: both are
/// exact, but for one that was converted or follows from two rounded levels.
pub(super) fn freeboard(desk: &Desk<'_>) -> Point {
    let at = (&SITE, Topic::Freeboard);
    let place = &desk.assessment.place;
    let rule = &desk.assessment.method.rule;
    let reference = format!("rule {}: {}", rule.id, rule.citation);
    let ours = place
        .design_level
        .as_ref()
        .and_then(|design| design.freeboard);
    let figure = ours.map(Figure::Height);
    let Some((theirs, tolerance)) = their_freeboard(desk) else {
        let missing = not_stated("freeboard, or flood_level and design_level on one datum,");
        return Point::unchecked(at, figure, None, missing, reference);
    };
    let Some(ours) = ours else {
        let missing = vec![desk.no_design_level(place)];
        return Point::unchecked(at, None, Some(theirs), missing, reference);
    };
    let point = Point::compared(
        at,
        Figure::Height(ours),
        theirs,
        tolerance.clone(),
        Sense::MoreIsSafer,
        reference,
    );
    let near = tolerance.half_width();
    let finding = point.difference().filter(|_| ours.value > near);
    let finding = finding.and_then(|difference| {
        if (difference + ours.value).abs() <= near {
            Some(Finding::FreeboardForgotten { freeboard: ours })
        } else if (difference - ours.value).abs() <= near {
            Some(Finding::FreeboardTwice {
                freeboard: ours,
                whose: Whose::Ours,
            })
        } else {
            None
        }
    });
    point.with(finding)
}

/// As stated, else what lies between the stated levels.
fn their_freeboard(desk: &Desk<'_>) -> Option<(Proposed, Tolerance)> {
    if let Some(written) = &desk.proposal.freeboard {
        let theirs = Proposed::of(Figure::Height(written.value), written);
        return Some((theirs, desk.of_chosen(written)));
    }
    let flood = desk.proposal.flood_level.as_ref()?;
    let design = desk.proposal.design_level.as_ref()?;
    let between: Length = design.value.above(flood.value).ok()?;
    let rounding = flood.rounding_sd().hypot(design.rounding_sd());
    let tolerance = Tolerance::default().and(Contribution::LastDigit, Some(rounding));
    Some((Proposed::follows(Figure::Height(between)), tolerance))
}
