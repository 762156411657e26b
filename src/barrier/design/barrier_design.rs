//! A designed barrier.

use super::anchoring::PlateAnchors;
use super::end_choice::EndChoice;
use super::ends::EndPostDesign;
use super::finish::{Beside, finish};
use super::frame::Framing;
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
    /// The posts at the wall; `None` where the kit has none that could stand there, and where
    /// posts leave no clear width.
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
/// `floor` is what its base plates stand on, `jamb` what the anchors up a reveal are set in.
///
/// # Errors
/// [`DesignError`] for numbers that cannot be, and for load factors that do not go with the
/// kit's material.
///
/// ```
/// use sillmark::barrier::{BarrierTask, DesignRules, Kit, MountPlace, Run, design_barrier};
/// use sillmark::load::{LoadZone, Salinity, WaterCase};
/// use sillmark::quantity::unit::{Length, foot, inch};
/// use sillmark::site::LoadStatement;
/// let (feet, inches) = (Length::new::<foot>, Length::new::<inch>);
/// let kit = Kit::demonstration()?;
/// let rules = DesignRules::of(&kit, &LoadStatement::default(), LoadZone::Other)?;
/// let garage = BarrierTask {
///     run: Run::straight(feet(14.0)),
///     height: feet(2.5),
///     opening_height: None,
///     place: MountPlace { reveal: Some(inches(8.0)), ..MountPlace::default() },
///     brace: None,
///     water: WaterCase::still(feet(2.5), inches(0.0), Salinity::Fresh),
/// };
/// let design = design_barrier(&garage, &kit, &rules, None, None)?.unwrap();
/// assert_eq!((design.stack.count, design.spans()), (5, 2)); // planks, side by side
/// assert!((design.pieces[0].length.get::<inch>() - 82.75).abs() < 1e-9);
/// assert!(design.shortfalls.is_empty() && design.governing().unwrap().holds());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
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
    let longest_span = longest_span.filter(|span| span.value > 0.0);
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
    let beside = Beside {
        longest_span,
        greatest_depth,
        floor,
        jamb,
    };
    finish(&framing, frame, &beside).map(Some)
}
