//! Whether the figures of a proposal go together: no map is asked.

use super::slips::{less_step, their_step};
use crate::proposal::{MeasuredFrom, ProposedOpening};
use crate::quantity::Length;
use crate::review::desk::Desk;
use crate::review::explain::ground_slips;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Point, Subject, Tolerance, Topic, Whose};

/// Protection height, barrier height and planks against each other.
pub(super) fn points(desk: &Desk<'_>, subject: &Subject, theirs: &ProposedOpening) -> Vec<Point> {
    [
        protection_height(desk, subject, theirs),
        barrier_height(desk, subject, theirs),
        plank_stack(desk, subject, theirs),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Design level less sill, by its own figures, with the rounding of both.
fn needed(desk: &Desk<'_>, theirs: &ProposedOpening) -> Option<(Length, f64)> {
    let design = desk.their_design()?.ok()?;
    let sill = desk.level(theirs.sill.as_ref()?).ok()?;
    let height = design
        .on_ours
        .elevation
        .above(sill.on_ours.elevation)
        .ok()?;
    let above = height.max(Length::default());
    Some((above, design.rounding.hypot(sill.rounding)))
}

fn protection_height(
    desk: &Desk<'_>,
    subject: &Subject,
    theirs: &ProposedOpening,
) -> Option<Point> {
    let written = theirs.protection_height.as_ref()?;
    // From the ground it is another height, which is compared with ours.
    if theirs.measured_from == Some(MeasuredFrom::Ground) {
        return None;
    }
    let (own, rounding) = needed(desk, theirs)?;
    let rounding = rounding.hypot(written.rounding_sd());
    let tolerance = Tolerance::default().and(Contribution::LastDigit, Some(rounding));
    let point = Point::compared(
        (subject, Topic::OwnProtectionHeight),
        Figure::Height(own),
        Proposed::of(Figure::Height(written.value), written),
        tolerance.clone(),
        Sense::MoreIsSafer,
        "design level less sill, as the proposal states them",
    );
    let steps: Vec<_> = their_step(desk, theirs).into_iter().collect();
    let slips = point
        .difference()
        .map(|difference| ground_slips(difference, &steps, &tolerance, Whose::Theirs));
    Some(point.with(slips.unwrap_or_default()))
}

/// The barrier against its own protection height, or against its own design level and sill.
fn barrier_height(desk: &Desk<'_>, subject: &Subject, theirs: &ProposedOpening) -> Option<Point> {
    let barrier = theirs.barrier_height.as_ref()?;
    let from_ground = theirs.measured_from == Some(MeasuredFrom::Ground);
    let (own, rounding) = match &theirs.protection_height {
        Some(written) => (written.value, written.rounding_sd()),
        None if from_ground => return None,
        None => needed(desk, theirs)?,
    };
    Some(Point::compared(
        (subject, Topic::OwnBarrierHeight),
        Figure::Height(own),
        Proposed::of(Figure::Height(barrier.value), barrier),
        Tolerance::default().and(Contribution::LastDigit, Some(rounding)),
        Sense::AtLeast,
        "a barrier reaches its protection height, as the proposal states them",
    ))
}

/// The height that is stated against that of so many planks: more is promised than they give.
fn plank_stack(desk: &Desk<'_>, subject: &Subject, theirs: &ProposedOpening) -> Option<Point> {
    let written = theirs.barrier_height.as_ref()?;
    let barrier = if theirs.measured_from == Some(MeasuredFrom::Ground) {
        // Its planks lie on the sill.
        less_step(written, &their_step(desk, theirs)?)
    } else {
        Proposed::of(Figure::Height(written.value), written)
    };
    let (planks, each) = (theirs.planks?, theirs.plank_height.as_ref()?);
    let stack = each.value * f64::from(planks);
    Some(Point::compared(
        (subject, Topic::PlankStack),
        Figure::Height(stack),
        barrier,
        // Pieces are chosen, not measured.
        Tolerance::default().and_foot(stack.value),
        Sense::LessIsSafer,
        "planks × plank_height, as the proposal states them",
    ))
}
