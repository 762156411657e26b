//! The wall around an opening.

use super::Pair;
use super::slips::over_sill;
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Figure, Finding, Point, Tolerance, Topic};

/// The water that the proposal puts on the wall, or ours where it states no height, against
/// what the wall takes.
pub(super) fn point(desk: &Desk<'_>, pair: &Pair<'_>) -> Option<Point> {
    let ours = pair.ours.opening.wall;
    let wall = ours.or(pair.theirs.wall);
    let written = pair.theirs.protection_height.as_ref();
    let written = written.or(pair.theirs.barrier_height.as_ref());
    let theirs = match written {
        Some(written) => over_sill(desk, pair, written).ok()?,
        None => Proposed::ours(Figure::Height(pair.ours.protection_height?)),
    };
    let other = match (pair.theirs.wall, ours) {
        (Some(theirs), Some(ours)) if theirs != ours => Some(Finding::OtherWall { theirs, ours }),
        _ => None,
    };
    let at = (&pair.subject, Topic::WaterOnWall);
    let limit = desk.assessment.method.limits.wall(wall);
    let reference = format!("{}: {}", limit.wall_name(), limit.citation);
    let point = match limit.depth {
        Some(depth) => Point::compared(
            at,
            Figure::Height(depth),
            theirs,
            Tolerance::default().and_foot(depth.value),
            Sense::AtMost,
            reference,
        ),
        None => Point::unchecked(
            at,
            None,
            Some(theirs),
            vec![format!(
                "what {} takes: a licensed engineer has to say",
                limit.wall_name()
            )],
            reference,
        ),
    };
    Some(point.with(other))
}
