//! Planks, posts and spans against the kit and our layout.

use super::Pair;
use super::slips::over_sill;
use crate::barrier::{BarrierDesign, Upright};
use crate::proposal::ProposedOpening;
use crate::quantity::Length;
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Figure, Point, Subject, Tolerance, Topic};

/// What the proposal states of them. Pieces are chosen: their figures are exact.
pub(super) fn points(desk: &Desk<'_>, pair: &Pair<'_>) -> Vec<Point> {
    let design = pair.ours.barrier.as_ref().map(|barrier| &barrier.design);
    [
        plank_height(desk, pair),
        kit_height(desk, &pair.subject, pair.theirs, Some(pair)),
        span(desk, pair, design),
        posts(pair, design),
        intermediate_posts(pair, design),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn of_kit(desk: &Desk<'_>) -> String {
    let kit = &desk.assessment.method.kit;
    format!("kit {}: {}", kit.id, kit.citation)
}

fn exact(length: Length) -> Tolerance {
    Tolerance::default().and_foot(length.value)
}

fn plank_height(desk: &Desk<'_>, pair: &Pair<'_>) -> Option<Point> {
    let theirs = pair.theirs.plank_height.as_ref()?;
    let cover = desk.assessment.method.kit.plank.cover;
    Some(Point::compared(
        (&pair.subject, Topic::PlankHeight),
        Figure::Dimension(cover),
        Proposed::of(Figure::Dimension(theirs.value), theirs),
        desk.of_chosen(theirs),
        Sense::LessIsSafer,
        of_kit(desk),
    ))
}

/// The barrier against the greatest height that the kit's maker builds. From the ground, what is
/// left of it over the sill of a known opening counts.
pub(super) fn kit_height(
    desk: &Desk<'_>,
    subject: &Subject,
    theirs: &ProposedOpening,
    pair: Option<&Pair<'_>>,
) -> Option<Point> {
    let written = theirs.barrier_height.as_ref()?;
    let over_sill = pair.and_then(|pair| over_sill(desk, pair, written).ok());
    let barrier = over_sill.unwrap_or_else(|| Proposed::of(Figure::Height(written.value), written));
    let limit = desk.assessment.method.kit.greatest_height?;
    Some(Point::compared(
        (subject, Topic::KitHeight),
        Figure::Height(limit),
        barrier,
        desk.of_chosen(written),
        Sense::AtMost,
        format!("{}, greatest_height", of_kit(desk)),
    ))
}

/// The clear span against the longest that the kit's planks pass under our loads.
fn span(desk: &Desk<'_>, pair: &Pair<'_>, design: Option<&BarrierDesign>) -> Option<Point> {
    let theirs = match &pair.theirs.span {
        Some(span) => Proposed::of(Figure::Dimension(span.value), span),
        None => Proposed {
            figure: Figure::Dimension(divided(pair)?),
            written: "the width over the intermediate posts".to_owned(),
        },
    };
    let at = (&pair.subject, Topic::Span);
    let reference = format!("{}, under our loads", of_kit(desk));
    let limit = design.and_then(longest_clear);
    let Some(limit) = limit else {
        let missing = "a barrier of ours with the span that its planks pass";
        return Some(Point::unchecked(
            at,
            None,
            Some(theirs),
            vec![missing.to_owned()],
            reference,
        ));
    };
    Some(Point::compared(
        at,
        Figure::Dimension(limit),
        theirs,
        exact(limit),
        Sense::AtMost,
        reference,
    ))
}

/// The longest clear width: the longest bearing length less what the bearings take of it.
fn longest_clear(design: &BarrierDesign) -> Option<Length> {
    let span = design
        .legs
        .iter()
        .flat_map(|planned| &planned.leg.spans)
        .next();
    let bearings = span.map_or(Length::default(), |span| span.bearing - span.clear);
    Some((design.longest_span? - bearings).max(Length::default()))
}

/// The width of a straight opening over its stated intermediate posts, posts taken as thin.
fn divided(pair: &Pair<'_>) -> Option<Length> {
    let posts = pair.theirs.intermediate_posts?;
    let width = pair.ours.opening.width?;
    let straight = pair.ours.opening.run.is_empty();
    // Posts have a width: what is left is a little less, which is on the safe side.
    straight.then(|| width / (f64::from(posts) + 1.0))
}

fn posts(pair: &Pair<'_>, design: Option<&BarrierDesign>) -> Option<Point> {
    let theirs = pair.theirs.posts?;
    let ours = design.map(|design| {
        let standing = design.count(Upright::Intermediate) + design.count(Upright::Corner);
        // One at each end of a barrier.
        standing + 2
    });
    Some(counted(pair, Topic::Posts, ours, theirs))
}

fn intermediate_posts(pair: &Pair<'_>, design: Option<&BarrierDesign>) -> Option<Point> {
    let theirs = pair.theirs.intermediate_posts?;
    let ours = design.map(|design| design.count(Upright::Intermediate));
    Some(counted(pair, Topic::IntermediatePosts, ours, theirs))
}

fn counted(pair: &Pair<'_>, topic: Topic, ours: Option<u32>, theirs: u32) -> Point {
    let at = (&pair.subject, topic);
    let theirs = Proposed::follows(Figure::Count(theirs));
    let reference = "our layout of the kit";
    match ours {
        None => Point::unchecked(
            at,
            None,
            Some(theirs),
            vec!["a barrier of ours".to_owned()],
            reference,
        ),
        Some(ours) => Point::compared(
            at,
            Figure::Count(ours),
            theirs,
            Tolerance::default(),
            Sense::MoreIsSafer,
            reference,
        ),
    }
}
