//! Lines of the page's tables and lists.

use crate::portfolio::summary::{Highest, Summary, VerdictCounts};
use crate::report::palette::verdict_colour;
use crate::report::portfolio::words::{counted, place, share};
use crate::report::words::{ORDER, label};
use crate::statement::Choice;
use crate::verdict::Verdict;

/// A verdict with its colour, for style sheet and legends.
pub(super) struct Shade {
    pub(super) word: &'static str,
    pub(super) label: &'static str,
    pub(super) colour: String,
}

impl Shade {
    pub(super) fn all() -> Vec<Self> {
        ORDER
            .map(|verdict| {
                let [red, green, blue] = verdict_colour(verdict);
                Self {
                    word: verdict.word(),
                    label: label(verdict),
                    colour: format!("#{red:02x}{green:02x}{blue:02x}"),
                }
            })
            .into()
    }
}

/// One of the key counts.
pub(super) struct Figure {
    /// The verdict's word, or nothing.
    pub(super) word: &'static str,
    pub(super) number: String,
    pub(super) what: &'static str,
    pub(super) share: Option<String>,
}

impl Figure {
    pub(super) fn all(summary: &Summary) -> Vec<Self> {
        let assessed = summary.assessed();
        let verdicts = ORDER.map(|verdict| {
            let number = summary.verdicts().of(verdict);
            Self {
                word: verdict.word(),
                number: counted(number),
                what: asked(verdict),
                share: Some(share(number, assessed)),
            }
        });
        let rejected = Self {
            word: "",
            number: counted(summary.rejected()),
            what: "rejected, in no figure",
            share: None,
        };
        verdicts.into_iter().chain([rejected]).collect()
    }
}

const fn asked(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Protect => "ask for a barrier",
        Verdict::Engineer => "ask for a licensed engineer",
        Verdict::Unresolved => "unresolved",
        Verdict::Above => "ask for none by this map and rule",
    }
}

/// A zone and its rows, in the order of [`ORDER`], all of them last.
pub(super) struct ZoneLine {
    pub(super) zone: String,
    pub(super) rows: Vec<String>,
}

impl ZoneLine {
    pub(super) fn all(summary: &Summary) -> Vec<Self> {
        let zones = zone_counts(summary).into_iter();
        zones
            .map(|(zone, counts)| {
                let verdicts = ORDER.iter().map(|verdict| counted(counts.of(*verdict)));
                let all = std::iter::once(counted(counts.total()));
                Self {
                    zone,
                    rows: verdicts.chain(all).collect(),
                }
            })
            .collect()
    }
}

/// Every zone with its rows, the largest first; what is not told apart, or in no zone, last.
pub(super) fn zone_counts(summary: &Summary) -> Vec<(String, VerdictCounts)> {
    let named = summary.zones().each();
    let mut zones: Vec<_> = named.map(|(zone, rows)| (zone.clone(), *rows)).collect();
    zones.sort_by_key(|(_, rows)| std::cmp::Reverse(rows.total()));
    let rest = [
        ("further zones", *summary.zones().others()),
        ("no zone", *summary.without_zone()),
    ];
    let rest = rest.into_iter().filter(|(_, rows)| !rows.is_empty());
    zones.extend(rest.map(|(name, rows)| (name.to_owned(), rows)));
    zones
}

/// A row of a ranking.
pub(super) struct Standing {
    pub(super) figure: String,
    pub(super) id: String,
    pub(super) word: &'static str,
    pub(super) place: String,
}

impl Standing {
    pub(super) fn all(highest: &Highest, figure: impl Fn(f64) -> String) -> Vec<Self> {
        let rows = highest.rows().iter();
        rows.map(|row| Self {
            figure: figure(row.figure),
            id: row.id.clone(),
            word: row.verdict.word(),
            place: place(row.location),
        })
        .collect()
    }
}

/// What is wrong with rejected rows.
pub(super) struct Reject {
    pub(super) number: String,
    pub(super) field: String,
    pub(super) problem: String,
}

impl Reject {
    pub(super) fn all(summary: &Summary) -> Vec<Self> {
        let line = |number: u64, field: &str, problem: &str| Self {
            number: counted(number),
            field: field.to_owned(),
            problem: problem.to_owned(),
        };
        let rejects = summary.rejects();
        let kinds = rejects.each();
        let mut lines: Vec<_> = kinds
            .map(|(kind, number)| line(*number, &kind.field, &kind.problem))
            .collect();
        if *rejects.others() > 0 {
            lines.push(line(
                *rejects.others(),
                "others",
                "further fields and problems",
            ));
        }
        lines
    }
}
