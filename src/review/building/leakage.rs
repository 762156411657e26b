//! What leaks through the seals.

use super::{SITE, not_stated};
use crate::inflow::{Inflow, WettedSeal, impermeability, impermeable_citation};
use crate::proposal::ProposedLeakage;
use crate::quantity::Length;
use crate::quantity::unit::VolumeRate;
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Point, Tolerance, Topic};

/// A rate against the kit's, and the whole against 4 in of water in 24 hours.
pub(super) fn leakage(desk: &Desk<'_>) -> Vec<Point> {
    let Some(theirs) = &desk.proposal.leakage else {
        let missing = not_stated("leakage");
        return vec![Point::unchecked(
            (&SITE, Topic::Leakage),
            None,
            None,
            missing,
            impermeable_citation().to_string(),
        )];
    };
    let mut points: Vec<Point> = rate(desk, theirs).into_iter().collect();
    points.push(whole(desk, theirs));
    points
}

/// Seals are no tighter than their maker states: a lower rate than the kit's falls short.
fn rate(desk: &Desk<'_>, theirs: &ProposedLeakage) -> Option<Point> {
    let ProposedLeakage::Rate(theirs) = theirs else {
        return None;
    };
    let at = (&SITE, Topic::LeakageRate);
    let kit = &desk.assessment.method.kit;
    let reference = format!("kit {}: {}", kit.id, kit.citation);
    let proposed = Proposed::of(Figure::FlowPerLength(theirs.value), theirs);
    let ours = kit.seal.as_ref().and_then(|seal| seal.leakage);
    Some(match ours {
        None => {
            let missing = vec![format!(
                "the leakage that the maker of kit {:?} states",
                kit.id
            )];
            Point::unchecked(at, None, Some(proposed), missing, reference)
        }
        Some(ours) => Point::compared(
            at,
            Figure::FlowPerLength(ours),
            proposed,
            Tolerance::default().and(Contribution::LastDigit, Some(theirs.rounding_sd())),
            Sense::MoreIsSafer,
            reference,
        ),
    })
}

/// The whole leakage against what "substantially impermeable" allows on the stated floor.
fn whole(desk: &Desk<'_>, theirs: &ProposedLeakage) -> Point {
    let at = (&SITE, Topic::Leakage);
    let reference = impermeable_citation().to_string();
    let (proposed, rounding) = match theirs {
        ProposedLeakage::Total(total) => (
            Proposed::of(Figure::Flow(total.value), total),
            total.rounding_sd(),
        ),
        ProposedLeakage::Rate(rate) => {
            let length = wetted(desk);
            // On no seal any rate would keep within the limit.
            if length.value <= 0.0 {
                let missing = "a barrier of ours, whose seals the rate goes with";
                return Point::unchecked(at, None, None, vec![missing.to_owned()], reference);
            }
            let flow: VolumeRate = rate.value * length;
            let written = format!(
                "{} on {} of our barriers' wetted seals",
                rate.text,
                desk.units().height(length)
            );
            let figure = Figure::Flow(flow);
            (
                Proposed { figure, written },
                rate.rounding_sd() * length.value,
            )
        }
    };
    let floor = desk.assessment.site.conditions.inside.floor_area;
    // An inflow of nothing: only the greatest flow that the definition allows is asked for.
    let allowed = floor.and_then(|floor| impermeability(&Inflow::default(), floor, None).ok());
    match allowed {
        None => Point::unchecked(
            at,
            None,
            Some(proposed),
            vec![
                "the floor that the water spreads on ([inside] floor_area in the site file)"
                    .to_owned(),
            ],
            reference,
        ),
        Some(allowed) => Point::compared(
            at,
            Figure::Flow(allowed.greatest_flow),
            proposed,
            Tolerance::default().and(Contribution::LastDigit, Some(rounding)),
            Sense::AtMost,
            reference,
        ),
    }
}

/// The wetted seals of our barriers, as the kit's leakage counts them.
fn wetted(desk: &Desk<'_>) -> Length {
    let kit = &desk.assessment.method.kit;
    let joints = kit
        .seal
        .as_ref()
        .is_some_and(|seal| seal.counts_plank_joints);
    let each = desk.assessment.openings.iter().filter_map(|opening| {
        let design = &opening.barrier.as_ref()?.design;
        let legs = design.legs.iter().map(|planned| planned.leg.length);
        let seal = WettedSeal {
            width: legs.sum(),
            height: design.stack.height,
            depth: opening.protection_height?,
            plank_cover: Some(kit.plank.cover),
        };
        let between = seal.joints().filter(|_| joints).unwrap_or_default();
        Some(seal.perimeter() + between)
    });
    each.sum()
}
