//! What of a barrier is nearest to its limit.

use crate::anchor::{AnchorCheck, Direction, Mode, ModeCheck};
use crate::barrier::{BarrierDesign, Check, EndPostDesign, LoadCase, Upright, UprightDesign};

/// The part of a barrier that is nearest to its limit, or furthest beyond.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Nearest {
    /// The part.
    pub(super) part: String,
    /// Number of its leg, for a plank.
    pub(super) leg: Option<usize>,
    /// How it would fail.
    pub(super) how: How,
    /// The water.
    pub(super) case: LoadCase,
    /// Demand over capacity.
    pub(super) used: f64,
}

/// How a part would fail.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum How {
    /// In bending, shear or deflection.
    Member(&'static str),
    /// By the force along it.
    Along,
    /// Anchors, in a mode.
    Anchors(Mode),
    /// Anchors, by tension and shear together.
    AnchorsTogether,
}

/// Every check of planks and posts, with the number of the leg for planks.
pub(super) fn checks(design: &BarrierDesign) -> impl Iterator<Item = (Option<usize>, &Check)> {
    let legs = design.legs.iter().enumerate();
    let planks = legs.flat_map(|(position, planned)| {
        let checks = planned.checks.iter();
        checks.map(move |check| (Some(position + 1), check))
    });
    let posts = design.uprights.iter().flat_map(|post| &post.checks);
    planks.chain(posts.map(|check| (None, check)))
}

impl Nearest {
    /// Of planks, posts, braces and anchors, as far as they could be checked.
    pub(super) fn of(design: &BarrierDesign) -> Option<Self> {
        let members = checks(design).map(|(leg, check)| Self {
            part: check.part.clone(),
            leg,
            how: How::Member(check.what),
            case: check.case,
            used: check.ratio(),
        });
        let braces = design.uprights.iter().filter_map(Self::of_brace);
        let plates = design.anchors.iter().filter_map(|plate| {
            let case = plate.forces.case;
            Self::of_anchors(plate.post, case, plate.check.as_ref()?)
        });
        let ends = design.end_post.iter().filter_map(Self::of_end_anchors);
        let all = members.chain(braces).chain(plates).chain(ends);
        all.max_by(|one, other| {
            let (one, other) = (weight(one.case, one.used), weight(other.case, other.used));
            one.total_cmp(&other)
        })
    }

    fn of_brace(post: &UprightDesign) -> Option<Self> {
        let brace = post.brace?;
        let role = match post.role {
            Upright::Intermediate => "intermediate",
            Upright::Corner => "corner",
        };
        Some(Self {
            part: format!("brace of the {role} post"),
            leg: None,
            how: How::Along,
            case: brace.case,
            used: brace.used()?,
        })
    }

    fn of_end_anchors(end: &EndPostDesign) -> Option<Self> {
        let check = end.anchors.as_ref()?.check.as_ref()?;
        let forces = end.forces.iter().map(|each| (each.case, each.force.value));
        Self::of_anchors("end post", worst_case(forces)?, check)
    }

    fn of_anchors(post: &str, case: LoadCase, check: &AnchorCheck) -> Option<Self> {
        let used = check.utilisation()?;
        let modes = [&check.tension, &check.shear];
        let governing = modes.into_iter().filter_map(Direction::governing);
        let alone = governing.max_by(|one, other| {
            let (one, other) = (one.utilisation(), other.utilisation());
            one.total_cmp(&other)
        });
        let together = alone.map_or(0.0, ModeCheck::utilisation) < used;
        Some(Self {
            part: format!("anchors of the {post}"),
            leg: None,
            how: match alone {
                Some(mode) if !together => How::Anchors(mode.mode),
                _ => How::AnchorsTogether,
            },
            case,
            used,
        })
    }
}

/// A figure of two cases that differs by less than this part of itself is the same.
const ALIKE: f64 = 1e-9;

/// The case with the greatest figure; water at the top of the barrier where they are alike.
pub(super) fn worst_case(figures: impl Iterator<Item = (LoadCase, f64)>) -> Option<LoadCase> {
    figures
        .max_by(|one, other| weight(one.0, one.1).total_cmp(&weight(other.0, other.1)))
        .map(|(case, _)| case)
}

fn weight(case: LoadCase, figure: f64) -> f64 {
    match case {
        LoadCase::Top => figure * (1.0 + ALIKE),
        LoadCase::DesignLevel => figure,
    }
}
