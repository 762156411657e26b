//! A designed barrier.

use super::anchoring::PlateAnchors;
use super::cut_list::{PostPiece, cut_list};
use super::end_choice::EndChoice;
use super::ends::{EndPostDesign, EndTask};
use super::findings::{open_items, shortfalls};
use super::frame::{Frame, Framing};
use super::spans::{Planks, PlannedLeg};
use super::task::{BarrierTask, DesignRules};
use super::upright::{Upright, UprightDesign};
use super::water::CaseLoad;
use crate::barrier::{
    Check, DesignError, Kit, LoadCase, Open, Piece, PlankStack, Shortfall, governing, planks_for,
};
use crate::load::LoadError;
use crate::quantity::Length;
use crate::site::AnchorSetting;

/// A barrier of whole planks before the water.
#[derive(Clone, Debug, PartialEq)]
pub struct BarrierDesign {
    /// Whole planks that reach the height.
    pub stack: PlankStack,
    /// The load at the design level and at the top of the barrier.
    pub loads: Vec<CaseLoad>,
    /// Each leg with its spans and the checks of its planks.
    pub legs: Vec<PlannedLeg>,
    /// The longest bearing length that planks of this kit pass over under these loads, up to
    /// what the kit's longest piece spans between end posts.
    pub longest_span: Option<Length>,
    /// The deepest water that the planks of this layout pass before, up to the greatest height
    /// of the kit, or twice the barrier's where the kit has none. Posts and anchors are not in
    /// it. `None` where no depth passes, and for water that drags (faster than 10 ft/s).
    pub greatest_depth: Option<Length>,
    /// The posts at the wall; `None` where the kit has none that could stand there.
    pub end_post: Option<EndPostDesign>,
    /// The free-standing posts.
    pub uprights: Vec<UprightDesign>,
    /// The anchors under their plates.
    pub anchors: Vec<PlateAnchors>,
    /// What has to be cut and carried. Where the mount is not measured yet the lengths are
    /// those of the wider one: see [`Open::Mount`].
    pub pieces: Vec<Piece>,
    /// Why the barrier is no answer without an engineer; empty where it is one.
    pub shortfalls: Vec<Shortfall>,
    /// What is still to be measured, stated or chosen.
    pub open: Vec<Open>,
}

impl BarrierDesign {
    /// How many spans there are in all.
    #[must_use]
    pub fn spans(&self) -> u32 {
        let spans = self.legs.iter().map(|planned| planned.leg.spans.len());
        u32::try_from(spans.sum::<usize>()).unwrap_or(u32::MAX)
    }

    /// How many posts of a kind stand free.
    #[must_use]
    pub fn count(&self, role: Upright) -> u32 {
        let posts = self.uprights.iter().filter(|post| post.role == role);
        posts.map(|post| post.count).sum()
    }

    /// Every check of planks and posts.
    pub fn checks(&self) -> impl Iterator<Item = &Check> {
        let planks = self.legs.iter().flat_map(|planned| &planned.checks);
        planks.chain(self.uprights.iter().flat_map(|post| &post.checks))
    }

    /// The check nearest to its capacity, or furthest beyond.
    #[must_use]
    pub fn governing(&self) -> Option<&Check> {
        governing(self.checks())
    }

    /// The load of one case.
    #[must_use]
    pub fn load(&self, case: LoadCase) -> Option<&CaseLoad> {
        self.loads.iter().find(|load| load.case == case)
    }
}

/// Designs a barrier of a kit; `None` where no plank is needed.
///
/// # Errors
/// [`DesignError`] for numbers that cannot be, and for load factors that do not go with the
/// kit's material.
pub fn design_barrier(
    task: &BarrierTask,
    kit: &Kit,
    rules: &DesignRules,
    floor: Option<&AnchorSetting>,
    jamb: Option<&AnchorSetting>,
) -> Result<Option<BarrierDesign>, DesignError> {
    if !task.height.is_finite() {
        return Err(DesignError::Load(LoadError::Height {
            name: "height of the barrier",
            value: task.height,
        }));
    }
    let stack = planks_for(task.height, kit);
    if stack.count == 0 {
        return Ok(None);
    }
    let of = |case, depth| CaseLoad::of(case, task.water, depth, stack.height);
    let loads = vec![
        of(LoadCase::DesignLevel, task.water.depth)?,
        of(LoadCase::Top, stack.height)?,
    ];
    let planks = Planks::of(kit, stack, &loads, rules)?;
    let ends = EndChoice::of(task, kit);
    // A plank is cut longer than it spans, by what stands in its pockets beyond the middle of
    // its bearings.
    let most = kit.plank.longest - ends.fit.engagement;
    let longest_span = planks.reach.map(|reach| reach.min(most));
    let framing = Framing {
        task,
        planks,
        ends: &ends,
    };
    let frame = framing.build()?;
    let bearings = frame
        .legs
        .iter()
        .map(|planned| planned.leg.longest_bearing());
    let bearing = bearings.fold(Length::default(), Length::max);
    let greatest_depth = if bearing.value > 0.0 {
        let most = kit.greatest_height.unwrap_or(stack.height * 2.0);
        framing.planks.greatest_depth(bearing, task.water, most)?
    } else {
        None
    };
    finish(
        &framing,
        frame,
        BarrierSoFar {
            longest_span,
            greatest_depth,
            floor,
            jamb,
        },
    )
    .map(Some)
}

struct BarrierSoFar<'a> {
    longest_span: Option<Length>,
    greatest_depth: Option<Length>,
    floor: Option<&'a AnchorSetting>,
    jamb: Option<&'a AnchorSetting>,
}

/// Wall, anchors, pieces and findings of a frame.
fn finish(
    framing: &Framing<'_>,
    frame: Frame,
    so_far: BarrierSoFar<'_>,
) -> Result<BarrierDesign, DesignError> {
    let planks = &framing.planks;
    let (kit, stack) = (planks.kit, planks.stack);
    let tributary = end_tributary(framing, &frame);
    let end_post = framing
        .ends
        .post
        .map(|post| {
            let task = EndTask {
                ends: framing.ends.ends,
                post,
                tributary,
                height: stack.height,
                loads: planks.loads,
                rules: planks.rules,
            };
            task.design(so_far.jamb)
        })
        .transpose()?;
    let anchors = plates(&frame, planks, so_far.floor)?;
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
        longest_span: so_far.longest_span,
        greatest_depth: so_far.greatest_depth,
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
    let spans = beside_walls.flat_map(|planned| planned.leg.spans.first());
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
    if let Some(post) = framing.ends.post {
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
