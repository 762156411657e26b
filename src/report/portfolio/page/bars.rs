//! Lying bars.

use super::tables::zone_counts;
use crate::level::LevelSource;
use crate::portfolio::summary::{Summary, VerdictCounts};
use crate::report::drawing::nice::pixels;
use crate::report::portfolio::words::{counted, cut, per_whole, share};
use crate::report::words::ORDER;
use crate::statement::Choice;

/// Bars under each other.
pub(super) struct Bars {
    pub(super) each: Vec<Bar>,
    /// Height of the drawing, in pixels.
    pub(super) height: String,
    /// The bars in words.
    pub(super) description: String,
}

pub(super) struct Bar {
    pub(super) label: String,
    /// Baseline of the text.
    pub(super) baseline: String,
    pub(super) top: String,
    pub(super) parts: Vec<Part>,
    /// What stands behind the bar, and where.
    pub(super) note: String,
    pub(super) note_at: String,
}

/// A part of a bar, in the colour of `word`.
pub(super) struct Part {
    pub(super) word: &'static str,
    pub(super) left: String,
    pub(super) wide: String,
}

/// Where bars start and how long the longest is, in pixels.
const START: f64 = 232.0;
const LONGEST: f64 = 270.0;
/// Bars and the space between.
const PITCH: f64 = 26.0;
/// Characters of a label.
const LABEL: usize = 31;
const ZONE: usize = 25;
/// More zones than this are drawn as one.
const MOST_ZONES: usize = 12;

/// A bar before it is drawn: label, the parts, what stands behind it.
struct Count {
    label: String,
    parts: Vec<(&'static str, u64)>,
    note: String,
}

impl Bars {
    /// All assessed rows in one bar of the whole width.
    pub(super) fn of_verdicts(summary: &Summary) -> Option<Self> {
        let verdicts = summary.verdicts();
        let mut left = 0.0;
        let parts = ORDER
            .into_iter()
            .filter(|verdict| verdicts.of(*verdict) > 0);
        let parts: Vec<Part> = parts
            .map(|verdict| {
                let wide = per_whole(verdicts.of(verdict), verdicts.total()) * 620.0;
                let part = Part {
                    word: verdict.word(),
                    left: pixels(left),
                    wide: pixels(wide.max(1.0)),
                };
                left += wide;
                part
            })
            .collect();
        let told = ORDER.map(|verdict| {
            format!(
                "{} {}",
                verdict.word(),
                share(verdicts.of(verdict), verdicts.total())
            )
        });
        (!parts.is_empty()).then(|| Self {
            each: vec![Bar {
                label: String::new(),
                baseline: String::new(),
                top: "0".to_owned(),
                parts,
                note: String::new(),
                note_at: String::new(),
            }],
            height: "22".to_owned(),
            description: told.join(", "),
        })
    }

    /// Rows by zone, each bar by verdict; `None` without a row.
    pub(super) fn of_zones(summary: &Summary) -> Option<Self> {
        let mut zones = zone_counts(summary);
        if zones.len() > MOST_ZONES {
            let rest = zones.split_off(MOST_ZONES - 1);
            let number = rest.len();
            let mut sum = VerdictCounts::default();
            for (_, rows) in rest {
                sum += rows;
            }
            zones.push((format!("{number} further lines"), sum));
        }
        let counts = zones.into_iter().map(|(zone, rows)| Count {
            label: cut(&zone, ZONE),
            parts: ORDER
                .map(|verdict| (verdict.word(), rows.of(verdict)))
                .into(),
            note: counted(rows.total()),
        });
        Self::drawn(counts.collect())
    }

    /// Rows by the source of their flood level, in the order of authority.
    pub(super) fn of_sources(summary: &Summary) -> Option<Self> {
        let known = LevelSource::ALL
            .map(|source| (source.title(), summary.level_sources().of(source.code())));
        let all = known
            .into_iter()
            .chain([("no level", summary.without_level())]);
        let counts = all
            .filter(|(_, rows)| *rows > 0)
            .map(|(title, rows)| Count {
                label: title.to_owned(),
                parts: vec![("plain", rows)],
                note: format!("{} ({})", counted(rows), share(rows, summary.assessed())),
            });
        Self::drawn(counts.collect())
    }

    fn drawn(counts: Vec<Count>) -> Option<Self> {
        let total = |count: &Count| count.parts.iter().map(|(_, rows)| rows).sum::<u64>();
        let most = counts.iter().map(total).max()?;
        let told: Vec<String> = counts
            .iter()
            .map(|count| format!("{} {}", count.label, count.note))
            .collect();
        let mut top = 4.0;
        let mut bars = Vec::new();
        for count in counts {
            let mut left = START;
            let drawn = count.parts.iter().filter(|(_, rows)| *rows > 0);
            let parts = drawn.map(|(word, rows)| {
                let wide = per_whole(*rows, most) * LONGEST;
                let part = Part {
                    word,
                    left: pixels(left),
                    wide: pixels(wide.max(1.0)),
                };
                left += wide.max(1.0);
                part
            });
            let parts = parts.collect();
            bars.push(Bar {
                label: cut(&count.label, LABEL),
                baseline: pixels(top + 13.0),
                top: pixels(top),
                parts,
                note: count.note,
                note_at: pixels(left + 7.0),
            });
            top += PITCH;
        }
        Some(Self {
            each: bars,
            height: pixels(top),
            description: told.join("; "),
        })
    }
}
