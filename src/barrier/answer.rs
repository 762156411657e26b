//! A barrier with all that goes with it: what leaks past it and what has to be carried.

use super::{
    BarrierDesign, BarrierTask, DesignError, DesignRules, Handling, Kit, LiftLimit, PlankStack,
    design_barrier, handling,
};
use crate::inflow::{Gap, Inflow, StatedLeakage, WettedSeal, gap_flow, overtopping, seal_leakage};
use crate::quantity::Length;
use crate::quantity::unit::Mass;
use crate::site::{AnchorSetting, SillGap};
use crate::statement::{Citation, Confidence};

/// What a barrier's surroundings add to its design.
#[derive(Clone, Copy, Debug, Default)]
pub struct Surroundings<'a> {
    /// What its base plates stand on.
    pub floor: Option<&'a AnchorSetting>,
    /// What the anchors up the reveal are set in.
    pub jamb: Option<&'a AnchorSetting>,
    /// An open gap along its sill.
    pub gap: Option<SillGap>,
    /// What one person may lift; the load constant of the NIOSH equation where it is not
    /// stated.
    pub lift: Option<Mass>,
}

/// A barrier, the water that gets past it at the design level, and its pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct BarrierAnswer {
    /// Planks, posts, brace, anchors.
    pub design: BarrierDesign,
    /// The water that gets past it, with water at the design level.
    pub inflow: Inflow,
    /// The pieces to carry.
    pub handling: Handling,
}

impl BarrierAnswer {
    /// Designs a barrier and works out what goes with it; `None` where no plank is needed.
    ///
    /// # Errors
    /// [`DesignError`] for numbers that cannot be, and for load factors that do not go with
    /// the kit's material.
    pub fn of(
        task: &BarrierTask,
        kit: &Kit,
        rules: &DesignRules,
        around: Surroundings<'_>,
    ) -> Result<Option<Self>, DesignError> {
        let Some(design) = design_barrier(task, kit, rules, around.floor, around.jamb)? else {
            return Ok(None);
        };
        let inflow = inflow(task, kit, design.stack, around.gap)?;
        let limit = match around.lift {
            Some(mass) => LiftLimit {
                mass,
                citation: Citation {
                    source: "as stated".to_owned(),
                    confidence: Confidence::Stated,
                },
            },
            None => LiftLimit::niosh_load_constant(),
        };
        Ok(Some(Self {
            handling: handling(&design.pieces, &limit)?,
            design,
            inflow,
        }))
    }
}

/// Leakage of the seals at the kit's rate, an open gap, and water over the top.
fn inflow(
    task: &BarrierTask,
    kit: &Kit,
    stack: PlankStack,
    gap: Option<SillGap>,
) -> Result<Inflow, DesignError> {
    let depth = task.water.depth.max(Length::default());
    let seal = WettedSeal {
        width: task.run.length(),
        height: stack.height,
        depth,
        plank_cover: Some(kit.plank.cover),
    };
    let stated = kit.seal.as_ref().and_then(|seal| {
        Some(StatedLeakage {
            rate: seal.leakage?,
            tested_depth: seal.tested_depth,
            counts_plank_joints: seal.counts_plank_joints,
            citation: kit.citation.clone(),
        })
    });
    let mut inflow = Inflow::default();
    inflow.add(seal_leakage(&seal, stated.as_ref())?);
    if let Some(gap) = gap {
        let gap = Gap {
            width: gap.length,
            from: Length::default(),
            to: gap.height,
        };
        inflow.add(gap_flow(&gap, depth, None)?);
    }
    if stack.is_overtopped_by(depth) {
        inflow.add(overtopping(
            task.run.length(),
            depth - stack.height,
            stack.height,
        )?);
    }
    Ok(inflow)
}
