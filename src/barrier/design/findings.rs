//! What a design lacks, and what somebody still has to measure, state or choose.

use super::barrier_design::BarrierDesign;
use super::frame::Framing;
use super::upright::Upright;
use crate::anchor::{AnchorCheck, Outcome};
use crate::barrier::{
    Basis, DesignError, LoadCase, MountChoice, Open, Shortfall, bending_capacity, shear_capacity,
};

/// Limits that the design passes, beyond those that the frame already found.
pub(super) fn shortfalls(design: &BarrierDesign, framing: &Framing<'_>) -> Vec<Shortfall> {
    let (task, kit) = (framing.task, framing.planks.kit);
    let height = design.stack.height;
    let mut found = Vec::new();
    if let Some(limit) = kit.greatest_height.filter(|limit| height > *limit) {
        found.push(Shortfall::OverKitHeight { height, limit });
    }
    if let Some(opening) = task.opening_height.filter(|opening| height > *opening) {
        found.push(Shortfall::OverOpeningHeight { height, opening });
    }
    if design.stack.is_overtopped_by(task.water.depth) {
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
    let posts = design.uprights.iter().flat_map(|post| &post.checks);
    let failing = posts.filter(|check| !check.holds());
    found.extend(failing.cloned().map(Shortfall::Fails));
    if let Some(brace) = kit.brace
        && let Some(capacity) = brace.capacity
    {
        for post in &design.uprights {
            if let Some(forces) = post.brace.filter(|forces| forces.along > capacity) {
                found.push(Shortfall::BraceFails {
                    along: forces.along,
                    capacity,
                });
            }
        }
    }
    for anchors in &design.anchors {
        let check = anchors.check.as_ref();
        if check.is_some_and(|check| check.outcome() == Outcome::Fails) {
            found.push(Shortfall::AnchorsFail {
                post: anchors.post,
                utilisation: check
                    .and_then(|check| check.utilisation())
                    .unwrap_or(f64::INFINITY),
            });
        }
    }
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
    let braced = design.uprights.iter().any(|post| post.brace.is_some());
    if braced && kit.brace.is_some_and(|brace| brace.capacity.is_none()) {
        open.push(Open::KitDoesNotState {
            what: "what its brace carries".to_owned(),
        });
    }
    open_anchors(design, framing, &mut open);
    open_strength(design, framing, &mut open)?;
    Ok(open)
}

fn open_anchors(design: &BarrierDesign, framing: &Framing<'_>, open: &mut Vec<Open>) {
    let kit = framing.planks.kit;
    if let Some(end) = design
        .end_post
        .as_ref()
        .and_then(|end| end.anchors.as_ref())
    {
        let why = unchecked(end.check.as_ref(), "[jamb]");
        if !why.is_empty() {
            open.push(Open::AnchorCapacity {
                post: "end post".to_owned(),
                why,
            });
        }
    }
    for post in &design.uprights {
        let name = post.role.name();
        let Some(anchors) = design.anchors.iter().find(|anchors| anchors.post == name) else {
            open.push(Open::KitDoesNotState {
                what: format!("the anchors of its {name}"),
            });
            continue;
        };
        let why = unchecked(anchors.check.as_ref(), "[floor]");
        if !why.is_empty() {
            open.push(Open::AnchorCapacity {
                post: name.to_owned(),
                why,
            });
        }
    }
    if let Some(end) = &design.end_post
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
fn unchecked(check: Option<&AnchorCheck>, table: &str) -> Vec<String> {
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
    let uprights = [
        (Upright::Intermediate, kit.posts.intermediate.as_ref()),
        (Upright::Corner, kit.posts.corner.as_ref()),
    ];
    let mut parts = vec![("plank", &kit.plank.section, &kit.plank.material)];
    for (role, post) in uprights {
        if let Some(post) = post
            && design.count(role) > 0
        {
            parts.push((role.name(), &post.section, &post.material));
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
