//! Protection heights as columns.

use crate::portfolio::summary::{HeightBin, HeightBins};
use crate::quantity::UnitSystem;
use crate::quantity::unit::{foot, meter};
use crate::report::drawing::nice::{at_least, pixels};
use crate::report::portfolio::words::{counted, heights, per_whole};
use crate::statement::Choice;
use crate::verdict::Verdict;

/// Columns beside each other, with both axes.
pub(super) struct Columns {
    pub(super) blocks: Vec<Block>,
    /// Position and label along the heights.
    pub(super) ticks_across: Vec<(String, String)>,
    /// Position and label along the counts.
    pub(super) ticks_up: Vec<(String, String)>,
    /// Name of the axis of heights, with its unit.
    pub(super) axis: String,
    /// Rows that are not drawn.
    pub(super) nothing: Option<String>,
    /// The columns in words: heights, and rows.
    pub(super) table: Vec<[String; 2]>,
    pub(super) description: String,
}

/// A part of a column, in the colour of `word`.
pub(super) struct Block {
    pub(super) word: &'static str,
    pub(super) left: String,
    pub(super) top: String,
    pub(super) wide: String,
    pub(super) high: String,
}

/// Left end of the axis, its length, the ground line and the height above it, in pixels.
const LEFT: f64 = 56.0;
const ACROSS: f64 = 554.0;
const GROUND: f64 = 200.0;
const UP: f64 = 180.0;
/// Fewest columns, so that a single one does not fill the plot.
const FEWEST: usize = 10;
/// From the ground line upward.
const STACK: [Verdict; 4] = [
    Verdict::Engineer,
    Verdict::Protect,
    Verdict::Unresolved,
    Verdict::Above,
];

impl Columns {
    /// The columns; `None` where no row has something to protect.
    pub(super) fn of(bins: &HeightBins, units: UnitSystem) -> Option<Self> {
        let nothing = bins.each().next().map_or(0, |bin| bin.rows.total());
        let columns: Vec<HeightBin> = bins.each().skip(1).collect();
        let most = columns.iter().map(|bin| bin.rows.total()).max()?;
        let pitch = ACROSS / as_number(columns.len().max(FEWEST));
        let step = step_up(most);
        let top = most.div_ceil(step) * step;
        let mut blocks = Vec::new();
        for (position, bin) in columns.iter().enumerate() {
            let left = LEFT + as_number(position) * pitch;
            let mut ground = GROUND;
            for verdict in STACK {
                let high = UP * per_whole(bin.rows.of(verdict), top);
                if high > 0.0 {
                    ground -= high;
                    blocks.push(Block {
                        word: verdict.word(),
                        left: pixels(left + 1.0),
                        top: pixels(ground),
                        wide: pixels(pitch - 2.0),
                        high: pixels(high.max(0.5)),
                    });
                }
            }
        }
        let filled = columns.iter().filter(|bin| !bin.rows.is_empty());
        let table: Vec<[String; 2]> = filled
            .map(|bin| [heights(bin, units), counted(bin.rows.total())])
            .collect();
        let told = table
            .iter()
            .map(|[heights, rows]| format!("{heights}: {rows}"));
        Some(Self {
            description: told.collect::<Vec<_>>().join("; "),
            blocks,
            ticks_across: ticks_across(columns.len(), pitch, units),
            ticks_up: (0..=top / step)
                .map(|number| number * step)
                .map(|rows| (pixels(GROUND - UP * per_whole(rows, top)), counted(rows)))
                .collect(),
            axis: format!(
                "Protection height in {}; each column is 0.1 m wide",
                match units {
                    UnitSystem::Si => "metres",
                    UnitSystem::Us => "feet",
                }
            ),
            nothing: (nothing > 0).then(|| counted(nothing)),
            table,
        })
    }
}

#[allow(clippy::cast_precision_loss)] // at most 31
fn as_number(columns: usize) -> f64 {
    columns as f64
}

/// A round number of rows that goes into `most` two to five times.
#[allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)] // a positive count of rows
fn step_up(most: u64) -> u64 {
    (at_least(most as f64 / 4.0).round() as u64).max(1)
}

/// Half metres or whole feet, and the mark above which heights are counted together.
fn ticks_across(columns: usize, pitch: f64, units: UnitSystem) -> Vec<(String, String)> {
    let top = HeightBins::top().get::<meter>();
    let bin = HeightBins::step().get::<meter>();
    let shown = (as_number(columns.max(FEWEST)) * bin).min(top);
    let (unit, step, decimals) = match units {
        UnitSystem::Si => (1.0, 0.5, 1),
        UnitSystem::Us => (
            crate::quantity::Length::new::<foot>(1.0).get::<meter>(),
            1.0,
            0,
        ),
    };
    let values = (0..).map(|number| f64::from(number) * step);
    let more = as_number(columns) * bin > top + bin / 2.0;
    // A mark at the top would stand on the word beside it.
    let last = if more { shown - bin } else { shown + bin / 2.0 };
    let values = values.take_while(|value| value * unit <= last);
    let mut ticks: Vec<_> = values
        .map(|value| {
            (
                pixels(LEFT + value * unit / bin * pitch),
                format!("{value:.decimals$}"),
            )
        })
        .collect();
    if more {
        let middle = LEFT + (as_number(columns) - 0.5) * pitch;
        ticks.push((pixels(middle), "more".to_owned()));
    }
    ticks
}
