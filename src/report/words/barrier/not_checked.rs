//! What no check of strength covers.

use super::words::list;
use crate::barrier::{BarrierDesign, Open};

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

/// What no check covers, by the parts that it holds for.
pub(super) fn not_checked(design: &BarrierDesign, detail: Detail) -> Vec<String> {
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
            Detail::Short | Detail::EachPart if whats.iter().all(|what| !what.contains(',')) => {
                list(&whats)
            }
            _ => whats.join("; "),
        };
        let parts: Vec<String> = parts.iter().map(|part| format!("the {part}s")).collect();
        match detail {
            Detail::Short | Detail::EachPart => {
                format!("have {} checked by an engineer: {whats}", list(&parts))
            }
            Detail::Full => format!("{}: {whats}", list(&parts)),
        }
    });
    told.collect()
}
