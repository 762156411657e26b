//! From a frame to a design: wall, anchors, pieces and findings.

use super::anchoring::PlateAnchors;
use super::barrier_design::BarrierDesign;
use super::cut_list::{PostPiece, cut_list};
use super::ends::EndTask;
use super::findings::{open_items, shortfalls};
use super::frame::{Frame, Framing};
use super::spans::Planks;
use crate::barrier::DesignError;
use crate::quantity::Length;
use crate::site::AnchorSetting;

/// What a design knows beside its frame.
pub(super) struct Beside<'a> {
    pub(super) longest_span: Option<Length>,
    pub(super) greatest_depth: Option<Length>,
    pub(super) floor: Option<&'a AnchorSetting>,
    pub(super) jamb: Option<&'a AnchorSetting>,
}

/// Wall, anchors, pieces and findings of a frame.
pub(super) fn finish(
    framing: &Framing<'_>,
    frame: Frame,
    beside: &Beside<'_>,
) -> Result<BarrierDesign, DesignError> {
    let planks = &framing.planks;
    let (kit, stack) = (planks.kit, planks.stack);
    let tributary = end_tributary(framing, &frame);
    // Where nothing is laid out no post stands anywhere.
    let end = framing.ends.post.filter(|_| !frame.legs.is_empty());
    let end_post = end
        .map(|post| {
            let task = EndTask {
                ends: framing.ends.ends,
                post,
                tributary,
                height: stack.height,
                loads: planks.loads,
                rules: planks.rules,
            };
            task.design(beside.jamb)
        })
        .transpose()?;
    let anchors = plates(&frame, planks, beside.floor)?;
    let legs: Vec<_> = frame
        .legs
        .iter()
        .map(|planned| planned.leg.clone())
        .collect();
    let pieces = cut_list(kit, stack, &legs, &posts(framing, &frame));
    let mut design = BarrierDesign {
        stack,
        loads: planks.loads.to_vec(),
        legs: frame.legs,
        longest_span: beside.longest_span,
        greatest_depth: beside.greatest_depth,
        end_post,
        uprights: frame.uprights,
        anchors,
        pieces,
        shortfalls: frame.shortfalls,
        open: Vec::new(),
    };
    let found = shortfalls(&design, framing);
    design.shortfalls.extend(found);
    design.open = open_items(&design, framing, frame.side_missing)?;
    Ok(design)
}

/// Half of the widest span beside a wall, and the end post's own width.
fn end_tributary(framing: &Framing<'_>, frame: &Frame) -> Length {
    let beside_walls = frame.legs.first().into_iter().chain(frame.legs.last());
    let spans = beside_walls.filter_map(|planned| planned.leg.spans.first());
    let widest = spans.fold(Length::default(), |widest, span| widest.max(span.clear));
    let post = framing.ends.post;
    widest / 2.0 + post.map_or(Length::default(), |post| post.width)
}

/// The anchors of free-standing posts and of their braces.
fn plates(
    frame: &Frame,
    planks: &Planks<'_>,
    floor: Option<&AnchorSetting>,
) -> Result<Vec<PlateAnchors>, DesignError> {
    let mut anchors = Vec::new();
    for upright in &frame.uprights {
        let post = planks.kit.posts.standing(upright.role);
        if let Some(pattern) = post.and_then(|post| post.anchors.as_ref()) {
            anchors.extend(PlateAnchors::of(upright, pattern, floor, planks.rules)?);
        }
    }
    let braces = frame.uprights.iter().filter_map(|post| post.brace);
    let most = braces.max_by(|one, other| one.along.value.total_cmp(&other.along.value));
    let pattern = planks.kit.brace.and_then(|brace| brace.anchors);
    if let (Some(forces), Some(pattern)) = (most, pattern) {
        anchors.push(PlateAnchors::of_brace(&forces, &pattern, planks.rules)?);
    }
    Ok(anchors)
}

/// The posts to cut.
fn posts<'a>(framing: &'a Framing<'_>, frame: &Frame) -> Vec<PostPiece<'a>> {
    let mut pieces: Vec<PostPiece<'a>> = Vec::new();
    if let Some(post) = framing.ends.post
        && !frame.legs.is_empty()
    {
        pieces.push(PostPiece {
            name: "end post",
            post,
            count: 2,
        });
    }
    for upright in &frame.uprights {
        let post = framing.planks.kit.posts.standing(upright.role);
        pieces.extend(post.map(|post| PostPiece {
            name: upright.role.name(),
            post,
            count: upright.count,
        }));
    }
    pieces
}
