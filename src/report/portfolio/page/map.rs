//! Where the rows are: a tile for each cell, larger with more rows, filled by verdict.

use std::fmt::Write;

use super::extent::Extent;
use super::frame::Frame;
use super::graticule::{Line, meridians, parallels};
use super::scale_bar::ScaleBar;
use crate::portfolio::summary::{Lattice, VerdictCounts};
use crate::quantity::UnitSystem;
use crate::report::drawing::nice::pixels;
use crate::report::portfolio::words::{counted, per_whole, rows};
use crate::statement::Choice;
use crate::verdict::Verdict;

/// From the bottom of a tile to its top: it fills from below with rows that ask for something.
const STACK: [Verdict; 4] = [
    Verdict::Engineer,
    Verdict::Protect,
    Verdict::Unresolved,
    Verdict::Above,
];
/// Side of the largest tile, in pixels.
const LARGEST: f64 = 34.0;
/// Side of a tile with one row, for that of the largest.
const SMALLEST_PART: f64 = 0.42;
/// Side of the largest tile, for that of its cell: neighbours do not touch.
const FILLED: f64 = 0.92;

pub(super) struct Map {
    pub(super) width: String,
    pub(super) height: String,
    /// With the labels above and the scale below.
    pub(super) height_with_margins: String,
    /// Where the scale stands.
    pub(super) below: String,
    pub(super) meridians: Vec<Line>,
    pub(super) parallels: Vec<Line>,
    /// For each verdict its word and the outline of its part of every tile.
    pub(super) parts: Vec<(&'static str, String)>,
    /// The outlines of all tiles.
    pub(super) outlines: String,
    pub(super) scale: ScaleBar,
    /// Tiles of the legend: side, and rows in words.
    pub(super) sizes: Vec<(String, String)>,
    /// What the map shows, for those who cannot see it.
    pub(super) description: String,
    /// Size of a cell in degrees.
    pub(super) cell: String,
}

impl Map {
    /// The map of a lattice; `None` where no row has a place.
    pub(super) fn of(lattice: &Lattice, units: UnitSystem) -> Option<Self> {
        let extent = Extent::of(lattice)?;
        let frame = Frame::around(&extent);
        let cell = extent.lattice.cell_degrees();
        let most = extent.lattice.cells().map(|cell| cell.rows.total()).max()?;
        let largest = LARGEST
            .min(FILLED * cell * frame.pixels_for_a_degree_of_longitude())
            .min(FILLED * cell * frame.pixels_for_a_degree_of_latitude());
        let side = |rows| largest * (SMALLEST_PART + (1.0 - SMALLEST_PART) * weight(rows, most));
        let mut parts = STACK.map(|verdict| (verdict.word(), String::new()));
        let mut outlines = String::new();
        let mut tiles = 0;
        for (column, row, each) in extent.cells() {
            let middle = |start: i32, step: i32| (f64::from(start) + f64::from(step) + 0.5) * cell;
            let (x, y) = (
                frame.x(middle(extent.west, column)),
                frame.y(middle(extent.south, row)),
            );
            let tile = Tile {
                x,
                y,
                side: side(each.rows.total()),
            };
            tile.fill(&each.rows, &mut parts);
            rectangle(&mut outlines, tile.left(), tile.top(), tile.side, tile.side);
            tiles += 1;
        }
        Some(Self {
            width: pixels(frame.width),
            height: pixels(frame.height),
            height_with_margins: pixels(frame.height + 64.0),
            below: pixels(frame.height + 22.0),
            meridians: meridians(&frame),
            parallels: parallels(&frame),
            parts: parts.into(),
            outlines,
            scale: ScaleBar::of(&frame, units),
            sizes: samples(most)
                .into_iter()
                .map(|number| (pixels(side(number)), rows(number)))
                .collect(),
            description: describe(lattice, tiles, most),
            cell: degrees(cell),
        })
    }
}

/// A power of two, as a fraction where it is one.
fn degrees(cell: f64) -> String {
    if cell < 1.0 {
        format!("1/{}°", 1.0 / cell)
    } else {
        format!("{cell}°")
    }
}

/// 0 for one row, 1 for the most in any cell, by the logarithm between.
#[allow(clippy::cast_precision_loss)] // for a drawing
fn weight(rows: u64, most: u64) -> f64 {
    if most <= 1 {
        return 1.0;
    }
    (rows.max(1) as f64).ln() / (most as f64).ln()
}

/// Numbers of rows for the legend: one, the most, and a round one between.
fn samples(most: u64) -> Vec<u64> {
    let digits = most.checked_ilog10().unwrap_or_default();
    let between = 10_u64.pow(digits.div_ceil(2));
    let mut samples = vec![1, between, most];
    samples.retain(|number| *number <= most);
    samples.dedup();
    samples
}

struct Tile {
    x: f64,
    y: f64,
    side: f64,
}

impl Tile {
    fn left(&self) -> f64 {
        self.x - self.side / 2.0
    }

    fn top(&self) -> f64 {
        self.y - self.side / 2.0
    }

    fn fill(&self, rows: &VerdictCounts, parts: &mut [(&'static str, String); 4]) {
        let mut bottom = self.top() + self.side;
        for (verdict, (_, path)) in STACK.into_iter().zip(parts) {
            let high = self.side * per_whole(rows.of(verdict), rows.total());
            if high > 0.0 {
                bottom -= high;
                rectangle(path, self.left(), bottom, self.side, high);
            }
        }
    }
}

fn rectangle(path: &mut String, left: f64, top: f64, wide: f64, high: f64) {
    // Writing to a String does not fail.
    let _ = write!(path, "M{left:.1} {top:.1}h{wide:.1}v{high:.2}h-{wide:.1}z");
}

fn describe(lattice: &Lattice, tiles: usize, most: u64) -> String {
    let tiles = match tiles {
        1 => "one tile".to_owned(),
        _ => format!("{} tiles", counted(tiles as u64)),
    };
    format!(
        "{} with a place, in {tiles}; the fullest holds {}. Each tile fills from below: licensed \
         engineer, barrier, unresolved, none by this map and rule.",
        rows(lattice.total()),
        rows(most),
    )
}
