//! What is still to settle, each thing said once.

use super::anchor_words;
use super::words::list;
use crate::anchor::{AnchorCheck, Need};
use crate::barrier::{BarrierAnswer, BarrierDesign, Open};
use crate::quantity::UnitSystem;

/// What somebody still has to measure, state or choose: one line a subject, for all parts that
/// it holds for.
#[must_use]
pub fn open_lines(answer: &BarrierAnswer, units: UnitSystem) -> Vec<String> {
    let design = &answer.design;
    let mut subjects = Vec::new();
    for open in &design.open {
        match open {
            Open::Mount { missing } => {
                let measures: Vec<String> = missing
                    .iter()
                    .map(|(field, least)| format!("{field} (at least {})", units.dimension(*least)))
                    .collect();
                subjects.push(format!(
                    "measure {}: that decides the mount and the length of the planks",
                    measures.join(" or ")
                ));
            }
            Open::BraceSide => subjects.push(
                "on which side a brace may stand (brace = \"dry side\" or \"water side\")"
                    .to_owned(),
            ),
            Open::NotStated { .. } => subjects.push(open.text(units)),
            Open::AnchorCapacity { .. }
            | Open::KitDoesNotState { .. }
            | Open::NotChecked { .. }
            | Open::LoadNotIncluded { .. } => {}
        }
    }
    subjects.extend(anchors_not_stated(design));
    subjects.extend(anchors_half_stated(design));
    subjects.extend(kit(design));
    subjects.extend(not_checked(design));
    subjects.extend(loads(design));
    let mut lines: Vec<String> = Vec::new();
    for subject in subjects {
        let line = format!("still to settle: {subject}");
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}

/// The posts whose anchors are open, each with its check.
fn open_anchors(design: &BarrierDesign) -> Vec<(&str, Option<&AnchorCheck>)> {
    let posts = design.open.iter().filter_map(|open| match open {
        Open::AnchorCapacity { post, .. } => Some(post.as_str()),
        _ => None,
    });
    posts
        .map(|post| {
            let check = if post == "end post" {
                let end = design.end_post.as_ref();
                let anchors = end.and_then(|end| end.anchors.as_ref());
                anchors.and_then(|anchors| anchors.check.as_ref())
            } else {
                let plates = &design.anchors;
                let plate = plates.iter().find(|plate| plate.post == post);
                plate.and_then(|plate| plate.check.as_ref())
            };
            (post, check)
        })
        .collect()
}

fn anchors_not_stated(design: &BarrierDesign) -> Option<String> {
    let posts: Vec<String> = open_anchors(design)
        .into_iter()
        .filter(|(_, check)| check.is_none())
        .map(|(post, _)| {
            let table = if post == "end post" {
                "[jamb]"
            } else {
                "[floor]"
            };
            format!("the {post}s ({table})")
        })
        .collect();
    (!posts.is_empty()).then(|| {
        format!(
            "what the anchors of {} are set in and how they are fixed; until then only their load is known, not what they hold",
            list(&posts)
        )
    })
}

/// What has to be stated for all ways of failing together, by the posts that ask for the same.
fn anchors_half_stated(design: &BarrierDesign) -> Vec<String> {
    let mut groups: Vec<(Vec<String>, Vec<Need>)> = Vec::new();
    for (post, check) in open_anchors(design) {
        let Some(check) = check else { continue };
        let mut needs: Vec<Need> = Vec::new();
        let unchecked = [&check.tension, &check.shear]
            .into_iter()
            .flat_map(|direction| &direction.unchecked);
        for need in unchecked.flat_map(|mode| &mode.state) {
            if !needs.contains(need) {
                needs.push(*need);
            }
        }
        let post = format!("the {post}s");
        match groups.iter_mut().find(|(_, known)| *known == needs) {
            Some((posts, _)) => posts.push(post),
            None => groups.push((vec![post], needs)),
        }
    }
    groups
        .into_iter()
        .map(|(posts, needs)| {
            let needs: Vec<String> = needs.into_iter().map(anchor_words::need).collect();
            format!("for the anchors of {}, {}", list(&posts), needs.join("; "))
        })
        .collect()
}

fn kit(design: &BarrierDesign) -> Option<String> {
    let silent: Vec<String> = design
        .open
        .iter()
        .filter_map(|open| match open {
            Open::KitDoesNotState { what } => Some(what.clone()),
            _ => None,
        })
        .collect();
    (!silent.is_empty()).then(|| format!("the kit does not state {}", list(&silent)))
}

/// What no check covers, by the parts that it holds for.
fn not_checked(design: &BarrierDesign) -> Vec<String> {
    let mut by_what: Vec<(&str, Vec<String>)> = Vec::new();
    for open in &design.open {
        if let Open::NotChecked { part, what } = open {
            match by_what.iter_mut().find(|(known, _)| known == what) {
                Some((_, parts)) if parts.contains(part) => {}
                Some((_, parts)) => parts.push(part.clone()),
                None => by_what.push((what, vec![part.clone()])),
            }
        }
    }
    let mut by_parts: Vec<(Vec<String>, Vec<&str>)> = Vec::new();
    for (what, parts) in by_what {
        match by_parts.iter_mut().find(|(known, _)| *known == parts) {
            Some((_, whats)) => whats.push(what),
            None => by_parts.push((parts, vec![what])),
        }
    }
    by_parts
        .into_iter()
        .map(|(parts, whats)| format!("not checked of {}: {}", list(&parts), whats.join("; ")))
        .collect()
}

fn loads(design: &BarrierDesign) -> Option<String> {
    let absent: Vec<&str> = design
        .open
        .iter()
        .filter_map(|open| match open {
            Open::LoadNotIncluded { what } => Some(what.as_str()),
            _ => None,
        })
        .collect();
    (!absent.is_empty()).then(|| absent.join("; "))
}
