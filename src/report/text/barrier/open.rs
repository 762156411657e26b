//! What is still to settle, each thing said once.

use super::anchor_words;
use super::words::list;
use crate::anchor::{AnchorCheck, Need};
use crate::barrier::{BarrierAnswer, BarrierDesign, Open};
use crate::quantity::UnitSystem;

/// What somebody still has to measure, state or choose: one short line a subject, for all parts
/// that it holds for.
#[must_use]
pub fn open_lines(answer: &BarrierAnswer, units: UnitSystem) -> Vec<String> {
    subjects(&answer.design, units, Detail::Short)
}

/// The same with a line of its own for each part, so that lines of several barriers that share
/// a part are alike.
pub(in super::super) fn open_lines_by_part(
    answer: &BarrierAnswer,
    units: UnitSystem,
) -> Vec<String> {
    subjects(&answer.design, units, Detail::EachPart)
}

/// How much is said of each subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Detail {
    /// No more than a person needs to know what to do.
    Short,
    /// The same, one part a line.
    EachPart,
    /// With clauses and remarks.
    Full,
}

/// The subjects, each once.
pub(super) fn subjects(design: &BarrierDesign, units: UnitSystem, detail: Detail) -> Vec<String> {
    let on_site = design.open.iter().filter_map(|open| match open {
        Open::Mount { missing } => {
            let measures: Vec<String> = missing
                .iter()
                .map(|(field, least)| format!("{field} (at least {})", units.dimension(*least)))
                .collect();
            Some(format!(
                "measure the {}: that decides the mount and the length of the planks",
                measures.join(" or the ")
            ))
        }
        Open::BraceSide => Some(
            "on which side a brace may stand (brace = \"dry side\" or \"water side\")".to_owned(),
        ),
        Open::NotStated { .. } => Some(open.text(units)),
        Open::AnchorCapacity { .. }
        | Open::KitDoesNotState { .. }
        | Open::NotChecked { .. }
        | Open::LoadNotIncluded { .. } => None,
    });
    let mut subjects: Vec<String> = Vec::new();
    let grouped = [
        anchors_not_stated(design),
        anchors_half_stated(design),
        kit(design),
        not_checked(design, detail),
        loads(design),
    ];
    for subject in on_site.chain(grouped.into_iter().flatten()) {
        if !subjects.contains(&subject) {
            subjects.push(subject);
        }
    }
    subjects
}

/// The texts of one kind of open item, each once.
fn texts<'a>(
    design: &'a BarrierDesign,
    of: impl Fn(&'a Open) -> Option<&'a String>,
) -> Vec<&'a String> {
    let mut texts = Vec::new();
    for text in design.open.iter().filter_map(of) {
        if !texts.contains(&text) {
            texts.push(text);
        }
    }
    texts
}

/// The posts whose anchors are open, each once with its check.
fn open_anchors(design: &BarrierDesign) -> Vec<(&str, Option<&AnchorCheck>)> {
    let posts = texts(design, |open| match open {
        Open::AnchorCapacity { post, .. } => Some(post),
        _ => None,
    });
    let end = design.end_post.as_ref();
    let end = end.and_then(|end| end.anchors.as_ref());
    posts
        .into_iter()
        .map(|post| {
            let plate = design.anchors.iter().find(|plate| plate.post == post);
            let check = match post.as_str() {
                "end post" => end.and_then(|anchors| anchors.check.as_ref()),
                _ => plate.and_then(|plate| plate.check.as_ref()),
            };
            (post.as_str(), check)
        })
        .collect()
}

/// Posts of which nobody said what their anchors are set in.
fn anchors_not_stated(design: &BarrierDesign) -> Vec<String> {
    let open = open_anchors(design).into_iter();
    let posts: Vec<String> = open
        .filter(|(_, check)| check.is_none())
        .map(|(post, _)| {
            let table = match post {
                "end post" => "[jamb]",
                _ => "[floor]",
            };
            format!("the {post}s ({table})")
        })
        .collect();
    if posts.is_empty() {
        return Vec::new();
    }
    vec![format!(
        "what the anchors of {} are set in and how they are fixed; until then only their load is known, not what they hold",
        list(&posts)
    )]
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
    let told = groups.into_iter().map(|(posts, needs)| {
        format!(
            "for the anchors of {}: {}",
            list(&posts),
            anchor_words::needs(&needs)
        )
    });
    told.collect()
}

fn kit(design: &BarrierDesign) -> Vec<String> {
    let silent = texts(design, |open| match open {
        Open::KitDoesNotState { what } => Some(what),
        _ => None,
    });
    if silent.is_empty() {
        return Vec::new();
    }
    let silent: Vec<String> = silent.into_iter().cloned().collect();
    vec![format!("the kit does not state {}", list(&silent))]
}

/// What no check covers, by the parts that it holds for.
fn not_checked(design: &BarrierDesign, detail: Detail) -> Vec<String> {
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
    let mut by_parts: Vec<(Vec<String>, Vec<String>)> = Vec::new();
    if detail == Detail::EachPart {
        by_what = by_what
            .into_iter()
            .flat_map(|(what, parts)| parts.into_iter().map(move |part| (what, vec![part])))
            .collect();
    }
    for (what, parts) in by_what {
        let what = match detail {
            // Clause and remark begin with a bracket, a colon or a semicolon.
            Detail::Short | Detail::EachPart => what.split(['(', ':', ';']).next().unwrap_or(what),
            Detail::Full => what,
        };
        let what = what.trim().to_owned();
        match by_parts.iter_mut().find(|(known, _)| *known == parts) {
            Some((_, whats)) => whats.push(what),
            None => by_parts.push((parts, vec![what])),
        }
    }
    let told = by_parts.into_iter().map(|(parts, whats)| {
        let whats = match detail {
            Detail::Short | Detail::EachPart => list(&whats),
            Detail::Full => whats.join("; "),
        };
        let parts: Vec<String> = parts.iter().map(|part| format!("the {part}s")).collect();
        format!("not checked of {}: {whats}", list(&parts))
    });
    told.collect()
}

fn loads(design: &BarrierDesign) -> Vec<String> {
    let absent = texts(design, |open| match open {
        Open::LoadNotIncluded { what } => Some(what),
        _ => None,
    });
    if absent.is_empty() {
        return Vec::new();
    }
    let (mut loads, mut others) = (Vec::new(), Vec::new());
    for what in absent {
        match what.split_once(" is not in the loads: ") {
            Some((load, reason)) => loads.push(format!("{load} ({reason})")),
            None => others.push(what.clone()),
        }
    }
    if !loads.is_empty() {
        others.insert(0, format!("not in the loads: {}", list(&loads)));
    }
    others
}
