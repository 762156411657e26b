//! What is still to settle, each thing once and as a task: state, measure, have checked.

use super::anchor_words;
use super::not_checked::{Detail, not_checked};
use super::ways::{statement, task};
use super::words::list;
use crate::anchor::{AnchorCheck, Need};
use crate::barrier::{BarrierAnswer, BarrierDesign, Open};
use crate::inflow::{Inflow, Missing};
use crate::quantity::UnitSystem;

/// What somebody still has to measure, state or have checked: one short line a subject, for
/// all parts that it holds for.
#[must_use]
pub fn open_lines(answer: &BarrierAnswer, units: UnitSystem) -> Vec<String> {
    subjects(answer, units, Detail::Short)
}

/// The same with a line of its own for each part, so that lines of several barriers that share
/// a part are alike.
pub(in crate::report) fn open_lines_by_part(
    answer: &BarrierAnswer,
    units: UnitSystem,
) -> Vec<String> {
    subjects(answer, units, Detail::EachPart)
}

/// The subjects, each once.
fn subjects(answer: &BarrierAnswer, units: UnitSystem, detail: Detail) -> Vec<String> {
    let design = &answer.design;
    let mut subjects: Vec<String> = Vec::new();
    let grouped = [
        on_site(design, units),
        anchors_not_stated(design),
        anchors_half_stated(design),
        kit(design),
        leakage(&answer.inflow, units),
        not_checked(design, detail),
        loads(design),
    ];
    for subject in grouped.into_iter().flatten() {
        if !subjects.contains(&subject) {
            subjects.push(subject);
        }
    }
    subjects
}

/// What is measured or chosen on site.
fn on_site(design: &BarrierDesign, units: UnitSystem) -> Vec<String> {
    let open = design.open.iter().filter_map(|open| match open {
        Open::Mount { missing } => {
            let measures: Vec<String> = missing
                .iter()
                .map(|(field, least)| format!("{field} (a post needs {})", units.dimension(*least)))
                .collect();
            Some(format!(
                "measure the {}: that decides the mount and the length of the planks",
                measures.join(" or the ")
            ))
        }
        Open::BraceSide => Some(
            "state on which side a brace may stand (brace = \"dry side\" or \"water side\")"
                .to_owned(),
        ),
        Open::SmallFactor { .. } => Some(open.text(units)),
        Open::AnchorCapacity { .. }
        | Open::KitDoesNotState { .. }
        | Open::NotChecked { .. }
        | Open::LoadNotIncluded(_) => None,
    });
    open.collect()
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

/// Posts without a check: nobody said what their anchors are set in, or something else keeps
/// their strength open.
fn anchors_not_stated(design: &BarrierDesign) -> Vec<String> {
    let (mut posts, mut others) = (Vec::new(), Vec::new());
    for (post, _) in open_anchors(design)
        .into_iter()
        .filter(|(_, check)| check.is_none())
    {
        let table = match post {
            "end post" => "[jamb]",
            _ => "[floor]",
        };
        let why = why_open(design, post);
        if why.contains(table) {
            posts.push(format!("the {post}s ({table})"));
        } else {
            others.push(format!(
                "what the anchors of the {post}s hold is not known: {why}"
            ));
        }
    }
    if !posts.is_empty() {
        let state = format!(
            "state what the anchors of {} are set in and how they are fixed: until then only their load is known, not what they hold",
            list(&posts)
        );
        others.insert(0, state);
    }
    others
}

/// Why the strength of a post's anchors is open; nothing where it is not.
pub(super) fn why_open(design: &BarrierDesign, whose: &str) -> String {
    let mut told: Vec<&str> = Vec::new();
    for open in &design.open {
        let Open::AnchorCapacity { post, why } = open else {
            continue;
        };
        for why in why.iter().filter(|_| post == whose) {
            if !told.contains(&why.as_str()) {
                told.push(why);
            }
        }
    }
    told.join("; ")
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
        let posts = list(&posts);
        if needs == [Need::MasonryTestAndEngineer] {
            return format!(
                "have the anchors of {posts} designed by an engineer, with the anchor maker's approval or tests for that masonry"
            );
        }
        format!(
            "state for the anchors of {posts}: {}",
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
    vec![format!("have the kit's maker state {}", list(&silent))]
}

/// What would give leakage a number, or a surer one.
fn leakage(inflow: &Inflow, units: UnitSystem) -> Vec<String> {
    let unknown = inflow.not_counted.iter();
    let unknown = unknown.filter_map(|other| task(other, units));
    let half = inflow.parts.iter().flat_map(|part| &part.not_stated);
    let half = half.filter(|missing| **missing != Missing::RunoffCoefficient);
    unknown.chain(half.copied().filter_map(statement)).collect()
}

/// Loads that may act and are not in the figures, in one line.
fn loads(design: &BarrierDesign) -> Vec<String> {
    let mut absent: Vec<String> = Vec::new();
    for open in &design.open {
        if let Open::LoadNotIncluded(load) = open {
            let line = format!("{} ({})", load.part, load.reason);
            if !absent.contains(&line) {
                absent.push(line);
            }
        }
    }
    if absent.is_empty() {
        return Vec::new();
    }
    vec![format!(
        "state what the loads are still without: {}",
        list(&absent)
    )]
}
