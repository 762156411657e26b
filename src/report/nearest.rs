//! What of a barrier is nearest to its limit.

use crate::anchor::{AnchorCheck, Direction, ModeCheck};
use crate::barrier::{BarrierDesign, Check, EndPostDesign, LoadCase, Upright, UprightDesign};

/// The part of a barrier that is nearest to its limit, or furthest beyond.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Nearest {
    /// The part.
    pub(super) part: String,
    /// Bending, shear, deflection, thrust, or how anchors fail.
    pub(super) what: String,
    /// The water.
    pub(super) case: LoadCase,
    /// Demand over capacity.
    pub(super) used: f64,
}

impl Nearest {
    /// Of planks, posts, braces and anchors, as far as they could be checked.
    pub(super) fn of(design: &BarrierDesign) -> Option<Self> {
        let checks = design.checks().map(Self::of_check);
        let braces = design.uprights.iter().filter_map(Self::of_brace);
        let plates = design.anchors.iter().filter_map(|plate| {
            let case = plate.forces.case;
            Self::of_anchors(plate.post, case, plate.check.as_ref()?)
        });
        let ends = design.end_post.iter().filter_map(Self::of_end_anchors);
        let all = checks.chain(braces).chain(plates).chain(ends);
        all.max_by(|one, other| one.used.total_cmp(&other.used))
    }

    fn of_check(check: &Check) -> Self {
        Self {
            part: check.part.clone(),
            what: check.what.to_owned(),
            case: check.case,
            used: check.ratio(),
        }
    }

    fn of_brace(post: &UprightDesign) -> Option<Self> {
        let brace = post.brace?;
        let role = match post.role {
            Upright::Intermediate => "intermediate",
            Upright::Corner => "corner",
        };
        Some(Self {
            part: format!("brace of the {role} post"),
            what: "the force along it".to_owned(),
            case: brace.case,
            used: (brace.along / brace.capacity?).value,
        })
    }

    fn of_end_anchors(end: &EndPostDesign) -> Option<Self> {
        let check = end.anchors.as_ref()?.check.as_ref()?;
        let worst = end
            .forces
            .iter()
            .max_by(|one, other| one.force.value.total_cmp(&other.force.value))?;
        Self::of_anchors("end post", worst.case, check)
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
            what: match alone {
                Some(mode) if !together => mode.mode.to_string(),
                _ => "tension and shear together".to_owned(),
            },
            case,
            used,
        })
    }
}
