//! Where the rows are: a coarse map.

use std::collections::HashMap;

use foldhash::fast::FixedState;
use serde::{Deserialize, Serialize};

use super::verdict_counts::VerdictCounts;
use crate::site::Location;
use crate::verdict::Verdict;

/// Rows by verdict in cells of a lattice of degrees.
///
/// A cell is `2^-fineness` degrees wide and high, so four cells of one fineness are exactly one
/// cell of the next coarser. The lattice starts with cells of 1/4096 degree (27 m along a
/// meridian) and is made coarser whenever more than [`Lattice::MOST_CELLS`] hold a row: its
/// fineness is the finest that all its rows allow, whatever their order.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "Written", into = "Written")]
pub struct Lattice {
    fineness: i8,
    cells: HashMap<Index, VerdictCounts, FixedState>,
}

/// Row from the equator northward, then column from Greenwich eastward.
type Index = (i32, i32);

/// A cell that holds at least one row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cell {
    /// Cells from Greenwich eastward to its western edge.
    pub column: i32,
    /// Cells from the equator northward to its southern edge.
    pub row: i32,
    /// What it holds.
    pub rows: VerdictCounts,
}

impl Default for Lattice {
    fn default() -> Self {
        Self {
            fineness: Self::FINEST,
            cells: HashMap::default(),
        }
    }
}

impl Lattice {
    /// More cells than this make it coarser.
    pub const MOST_CELLS: usize = 2000;
    const FINEST: i8 = 12;
    /// Cells of 8 degrees: the last that divide the 360 degrees of a parallel; the whole earth
    /// has 45 × 23 of them.
    const COARSEST: i8 = -3;

    /// An empty one with cells as large.
    pub(super) fn as_coarse_as(other: &Self) -> Self {
        Self {
            fineness: other.fineness,
            ..Self::default()
        }
    }

    pub(super) fn add(&mut self, place: Location, verdict: Verdict) {
        let index = self.index(place);
        if let Some(rows) = self.cells.get_mut(&index) {
            rows.add(verdict);
        } else {
            self.cells.insert(index, VerdictCounts::from(verdict));
            self.coarsen_to_fit();
        }
    }

    #[allow(clippy::cast_possible_truncation)] // at most 180 × 4096
    fn index(&self, place: Location) -> Index {
        let cell = |degrees: f64| (degrees / self.cell_degrees()).floor() as i32;
        // The meridian of 180 degrees is one line, whichever sign it is written with.
        let longitude = place.longitude();
        let longitude = if longitude >= 180.0 {
            -180.0
        } else {
            longitude
        };
        (cell(place.latitude()), cell(longitude))
    }

    fn coarsen_to_fit(&mut self) {
        while self.cells.len() > Self::MOST_CELLS && self.fineness > Self::COARSEST {
            self.coarsen();
        }
    }

    /// Cells twice as wide and high.
    fn coarsen(&mut self) {
        let cells = std::mem::take(&mut self.cells);
        self.fineness -= 1;
        for ((row, column), rows) in cells {
            *self.cells.entry((row >> 1, column >> 1)).or_default() += rows;
        }
    }

    pub(super) fn merge(&mut self, other: &Self) {
        while self.fineness > other.fineness {
            self.coarsen();
        }
        let shift = other.fineness - self.fineness;
        for ((row, column), rows) in &other.cells {
            *self
                .cells
                .entry((row >> shift, column >> shift))
                .or_default() += *rows;
        }
        self.coarsen_to_fit();
    }

    /// Width and height of a cell in degrees, a power of two.
    #[must_use]
    pub fn cell_degrees(&self) -> f64 {
        f64::from(-self.fineness).exp2()
    }

    /// Cells around a whole parallel.
    #[must_use]
    #[allow(clippy::cast_possible_truncation)] // at most 360 × 4096
    pub fn columns_around(&self) -> i32 {
        (360.0 / self.cell_degrees()).round() as i32
    }

    /// The cells that hold a row, from south to north, in each row of cells from west to east.
    pub fn cells(&self) -> impl Iterator<Item = Cell> {
        let sorted = self.sorted().into_iter();
        sorted.map(|((row, column), rows)| Cell { column, row, rows })
    }

    /// The cells in the order of their indices.
    fn sorted(&self) -> Vec<(Index, VerdictCounts)> {
        let mut cells: Vec<_> = self
            .cells
            .iter()
            .map(|(index, rows)| (*index, *rows))
            .collect();
        cells.sort_unstable_by_key(|(index, _)| *index);
        cells
    }

    /// Rows with a location.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.cells.values().map(VerdictCounts::total).sum()
    }

    /// The same rows in cells of twice the width and height; `None` where there are none.
    #[must_use]
    pub fn coarser(&self) -> Option<Self> {
        (self.fineness > Self::COARSEST).then(|| {
            let mut coarser = self.clone();
            coarser.coarsen();
            coarser
        })
    }
}

/// A lattice as it is written down. For each cell five numbers in one list: how far it lies
/// behind the one before, counted along the rows of cells, and the counts by verdict.
#[derive(Serialize, Deserialize)]
struct Written {
    fineness: i8,
    cells: Vec<u64>,
}

impl From<Lattice> for Written {
    fn from(lattice: Lattice) -> Self {
        let mut cells = Vec::with_capacity(lattice.cells.len() * 5);
        let mut before = 0;
        for (index, rows) in lattice.sorted() {
            let place = place_along_rows(index);
            cells.push(place - before);
            cells.extend(rows.numbers());
            before = place;
        }
        Self {
            fineness: lattice.fineness,
            cells,
        }
    }
}

impl TryFrom<Written> for Lattice {
    type Error = String;

    fn try_from(written: Written) -> Result<Self, String> {
        let fineness = written.fineness;
        if !(Self::COARSEST..=Self::FINEST).contains(&fineness) {
            return Err(format!("{fineness} is not the fineness of a lattice"));
        }
        let (records, rest) = written.cells.as_chunks::<5>();
        if !rest.is_empty() {
            return Err("the last cell of the lattice is cut off".to_owned());
        }
        let mut cells = HashMap::default();
        let mut place = 0_u64;
        for [step, above, protect, engineer, unresolved] in records {
            place = place.saturating_add(*step);
            let rows = VerdictCounts::from_numbers([*above, *protect, *engineer, *unresolved]);
            let index = index_along_rows(place)
                .ok_or_else(|| format!("the lattice has no cell {place}"))?;
            cells.insert(index, rows);
        }
        Ok(Self { fineness, cells })
    }
}

/// More columns than any lattice has, and half of them, so that no index is negative.
const COLUMNS: i64 = 1 << 22;
const HALF: i64 = 1 << 21;

fn place_along_rows((row, column): Index) -> u64 {
    let place = (i64::from(row) + HALF) * COLUMNS + i64::from(column) + HALF;
    place.unsigned_abs()
}

fn index_along_rows(place: u64) -> Option<Index> {
    let place = i64::try_from(place).ok()?;
    let row = i32::try_from(place / COLUMNS - HALF).ok()?;
    let column = i32::try_from(place % COLUMNS - HALF).ok()?;
    Some((row, column))
}
