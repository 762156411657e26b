//! What a design lacks, and what somebody still has to measure, state or choose.

use super::DesignRules;
use super::anchoring::{PlateAnchors, takes_moment};
use super::barrier_design::BarrierDesign;
use super::beyond::beyond_the_checks;
use super::frame::Framing;
use super::upright::Upright;
use crate::anchor::{AnchorCheck, Outcome};
use crate::barrier::limit::exceeds;
use crate::barrier::{
    Basis, DesignError, Kit, LoadCase, MountChoice, Open, Shortfall, bending_capacity,
    shear_capacity,
};

/// Limits that the design passes, beyond those that the frame already found.
pub(super) fn shortfalls(design: &BarrierDesign, framing: &Framing<'_>) -> Vec<Shortfall> {
    let (task, kit) = (framing.task, framing.planks.kit);
    let height = design.stack.height;
    let mut found = Vec::new();
    if let Some(limit) = kit.greatest_height.filter(|limit| exceeds(height, *limit)) {
        found.push(Shortfall::OverKitHeight { height, limit });
    }
    let opening = task.opening_height;
    if let Some(opening) = opening.filter(|opening| exceeds(height, *opening)) {
        found.push(Shortfall::OverOpeningHeight { height, opening });
    }
    if exceeds(task.water.depth, height) {
        found.push(Shortfall::Overtopped {
            depth: task.water.depth,
            height,
        });
    }
    match &framing.ends.mount {
        Some(MountChoice::Nothing { too_small }) => found.push(Shortfall::NoMount {
            too_small: too_small.clone(),
        }),
        None if framing.ends.post.is_none() => found.push(Shortfall::KitLacks {
            part: "inside post",
            purpose: "the ends of this run need against the wall".to_owned(),
        }),
        _ => {}
    }
    posts_that_fail(design, &mut found);
    anchors_that_fail(design, kit, &mut found);
    for load in design
        .loads
        .iter()
        .filter(|load| load.case == LoadCase::DesignLevel)
    {
        for outside in load.water.outside_with_top(height) {
            found.push(Shortfall::OutsideMethod {
                what: outside.to_string(),
            });
        }
    }
    found
}

fn posts_that_fail(design: &BarrierDesign, found: &mut Vec<Shortfall>) {
    for post in &design.uprights {
        let failing = post.checks.iter().filter(|check| !check.holds());
        found.extend(failing.cloned().map(Shortfall::Fails));
        if let Some(forces) = post.brace.filter(|forces| !forces.holds())
            && let Some(capacity) = forces.capacity
        {
            found.push(Shortfall::BraceFails {
                along: forces.demand(),
                capacity,
            });
        }
    }
}

fn anchors_that_fail(design: &BarrierDesign, kit: &Kit, found: &mut Vec<Shortfall>) {
    for post in &design.uprights {
        let pattern = kit.posts.standing(post.role).and_then(|post| post.anchors);
        if pattern.is_some_and(|pattern| !takes_moment(post, &pattern)) {
            found.push(Shortfall::KitLacks {
                part: "second row of anchors under a post",
                purpose: "the moment at its foot needs".to_owned(),
            });
        }
    }
    let end = design
        .end_post
        .iter()
        .filter_map(|end| end.anchors.as_ref());
    let end = end.map(|anchors| ("end post", anchors.check.as_ref()));
    let plates = design.anchors.iter();
    let plates = plates.map(|anchors| (anchors.post, anchors.check.as_ref()));
    for (post, check) in end.chain(plates) {
        if let Some(check) = check.filter(|check| check.outcome() == Outcome::Fails) {
            found.push(Shortfall::AnchorsFail {
                post,
                utilisation: check.utilisation().unwrap_or(f64::INFINITY),
            });
        }
    }
}

/// What is open.
pub(super) fn open_items(
    design: &BarrierDesign,
    framing: &Framing<'_>,
    side_missing: bool,
) -> Result<Vec<Open>, DesignError> {
    let kit = framing.planks.kit;
    let mut open = Vec::new();
    if let Some(MountChoice::MeasureOnSite { missing }) = &framing.ends.mount {
        open.push(Open::Mount {
            missing: missing.clone(),
        });
    }
    if side_missing {
        open.push(Open::BraceSide);
    }
    open_brace(design, kit, &mut open);
    open_loads(design, &mut open);
    open_anchors(design, framing, &mut open);
    if design.count(Upright::Corner) > 0 {
        open.push(Open::NotChecked {
            part: Upright::Corner.name().to_owned(),
            what: "bending about a diagonal: the vector sum of both legs is compared with its strength about the axis along the wall, and its anchors are checked toward one edge".to_owned(),
        });
    }
    open_strength(design, framing, &mut open)?;
    open.extend(beyond_the_checks(design, framing)?);
    Ok(open)
}

/// Loads that may act and are not in the figures.
fn open_loads(design: &BarrierDesign, open: &mut Vec<Open>) {
    let load = design.load(LoadCase::DesignLevel);
    let absent = load.iter().flat_map(|load| &load.water.not_included);
    let may_act = absent.filter(|absent| absent.may_act);
    open.extend(may_act.copied().map(Open::LoadNotIncluded));
}

fn open_brace(design: &BarrierDesign, kit: &Kit, open: &mut Vec<Open>) {
    let Some(brace) = kit.brace else { return };
    if design.uprights.iter().all(|post| post.brace.is_none()) {
        return;
    }
    if brace.capacity.is_none() {
        open.push(Open::KitDoesNotState {
            what: "what its brace carries".to_owned(),
        });
    }
    open.push(if brace.anchors.is_none() {
        Open::KitDoesNotState {
            what: "the anchors at the foot of its brace".to_owned(),
        }
    } else {
        Open::AnchorCapacity {
            post: PlateAnchors::BRACE.to_owned(),
            why: vec!["the edges around its foot are not stated".to_owned()],
        }
    });
}

fn open_anchors(design: &BarrierDesign, framing: &Framing<'_>, open: &mut Vec<Open>) {
    let kit = framing.planks.kit;
    let rules = framing.planks.rules;
    let mut capacity = |post: &str, check: Option<&AnchorCheck>, table: &str| {
        let why = unchecked(check, table, rules);
        if !why.is_empty() {
            open.push(Open::AnchorCapacity {
                post: post.to_owned(),
                why,
            });
        }
    };
    let end = design.end_post.as_ref();
    if let Some(anchors) = end.and_then(|end| end.anchors.as_ref()) {
        capacity("end post", anchors.check.as_ref(), "[jamb]");
    }
    for anchors in design
        .anchors
        .iter()
        .filter(|anchors| anchors.post != PlateAnchors::BRACE)
    {
        capacity(anchors.post, anchors.check.as_ref(), "[floor]");
    }
    for post in &design.uprights {
        let stated = kit.posts.standing(post.role);
        if stated.is_some_and(|post| post.anchors.is_none()) {
            open.push(Open::KitDoesNotState {
                what: format!("the anchors of its {}", post.role.name()),
            });
        }
    }
    if let Some(end) = end
        && end.anchors.is_none()
        && end.forces.iter().all(|forces| forces.bearing.is_none())
        && kit.posts.inside.is_some()
        && end.ends.is_some()
    {
        open.push(Open::KitDoesNotState {
            what: "where the anchors of its inside post are".to_owned(),
        });
    }
}

/// What keeps the capacity of anchors open.
fn unchecked(check: Option<&AnchorCheck>, table: &str, rules: &DesignRules) -> Vec<String> {
    if !rules.has_anchor_strengths() {
        return vec![format!(
            "the load factors {} go with the anchor strengths of EN 1992-4, which are not worked out here",
            rules.combination.id
        )];
    }
    let Some(check) = check else {
        return vec![format!(
            "nobody stated what they are set in and how they are fixed ({table})"
        )];
    };
    [&check.tension, &check.shear]
        .into_iter()
        .flat_map(|direction| &direction.unchecked)
        .map(ToString::to_string)
        .collect()
}

/// What the strength of planks and posts does not cover.
fn open_strength(
    design: &BarrierDesign,
    framing: &Framing<'_>,
    open: &mut Vec<Open>,
) -> Result<(), DesignError> {
    let kit = framing.planks.kit;
    let mut parts = vec![("plank", &kit.plank.section, &kit.plank.material)];
    for upright in &design.uprights {
        if let Some(post) = kit.posts.standing(upright.role) {
            parts.push((upright.role.name(), &post.section, &post.material));
        }
    }
    let rules = framing.planks.rules;
    for (name, section, material) in parts {
        let basis = Basis::of(material, &rules.combination, rules.zone, &rules.deflection)?;
        let bending = bending_capacity(section, material, basis.strength)?;
        let shear = shear_capacity(section, material, basis.strength)?;
        for what in bending.not_checked.into_iter().chain(shear.not_checked) {
            open.push(Open::NotChecked {
                part: name.to_owned(),
                what: what.to_owned(),
            });
        }
    }
    Ok(())
}
