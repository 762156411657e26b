//! Which parts of the images are wanted.

use std::collections::{BTreeSet, HashSet};
use std::ops::Range;

use super::image::Size;

/// Cells a side that a unit has at least, as far as the image does.
const LEAST_SIDE: u64 = 64;

/// Most units: with the least side, 65 km × 65 km of cells of a metre.
const MOST: u64 = 1 << 20;

/// The cells of a rectangle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Window {
    pub(super) columns: Range<u64>,
    pub(super) rows: Range<u64>,
}

/// The images cut into units: several whole blocks of each of them, so that every unit can be
/// had or left out for itself.
pub(super) struct Units {
    size: Size,
    unit: Size,
    wanted: BTreeSet<(u64, u64)>,
    /// Rectangles of units that were asked for: neighbours ask for the same ones.
    asked: HashSet<[u64; 4]>,
}

impl Units {
    /// Units of an image of a size, cut into blocks of each of some sizes.
    pub(super) fn of(size: Size, blocks: &[Size]) -> Self {
        let unit = |of: fn(&Size) -> u64| {
            let all = blocks.iter().map(of).fold(1, common_multiple);
            let least = all.saturating_mul(LEAST_SIDE.div_ceil(all));
            // A unit that holds the whole image need not hold more.
            least.min(of(&size))
        };
        Self {
            size,
            unit: Size {
                columns: unit(|size| size.columns),
                rows: unit(|size| size.rows),
            },
            wanted: BTreeSet::new(),
            asked: HashSet::new(),
        }
    }

    /// Wants the units of some cells, which lie within the image; `false` where that would be
    /// too many.
    pub(super) fn want(&mut self, columns: &Range<usize>, rows: &Range<usize>) -> bool {
        let units = |cells: &Range<usize>, side: u64| {
            (cells.start as u64 / side)..(cells.end as u64).div_ceil(side)
        };
        let (across, down) = (
            units(columns, self.unit.columns),
            units(rows, self.unit.rows),
        );
        let sides = [across.start, across.end, down.start, down.end];
        if !self.asked.insert(sides) {
            return true;
        }
        let count = (across.end - across.start).saturating_mul(down.end - down.start);
        if count > MOST - self.wanted.len() as u64 {
            return false;
        }
        let all = down.flat_map(|row| across.clone().map(move |column| (row, column)));
        self.wanted.extend(all);
        true
    }

    pub(super) fn is_empty(&self) -> bool {
        self.wanted.is_empty()
    }

    /// The smallest rectangle of whole units that holds all that are wanted.
    pub(super) fn window(&self) -> Window {
        let range = |of: fn(&(u64, u64)) -> u64, side: u64, whole: u64| {
            let units = || self.wanted.iter().map(of);
            let first = units().min().unwrap_or(0) * side;
            let end = units()
                .max()
                .map_or(0, |last| (last + 1).saturating_mul(side));
            first..end.min(whole)
        };
        Window {
            columns: range(|unit| unit.1, self.unit.columns, self.size.columns),
            rows: range(|unit| unit.0, self.unit.rows, self.size.rows),
        }
    }

    /// Whether there are units in the window that are not wanted.
    pub(super) fn leave_gaps(&self) -> bool {
        let Window { columns, rows } = self.window();
        let count = |cells: Range<u64>, side: u64| (cells.end - cells.start).div_ceil(side);
        let all = count(columns, self.unit.columns) * count(rows, self.unit.rows);
        all > self.wanted.len() as u64
    }

    /// The blocks of a size in the wanted units, in rectangles of blocks.
    pub(super) fn blocks(&self, block: Size) -> impl Iterator<Item = Window> {
        self.wanted.iter().map(move |(row, column)| {
            let within = |unit: u64, side: u64, block: u64, whole: u64| {
                let first = unit * side;
                let end = first.saturating_add(side).min(whole);
                first / block..end.div_ceil(block)
            };
            Window {
                columns: within(*column, self.unit.columns, block.columns, self.size.columns),
                rows: within(*row, self.unit.rows, block.rows, self.size.rows),
            }
        })
    }
}

/// The least common multiple; saturates.
fn common_multiple(one: u64, other: u64) -> u64 {
    let (mut divisor, mut rest) = (one, other);
    while rest != 0 {
        (divisor, rest) = (rest, divisor % rest);
    }
    (one / divisor.max(1)).saturating_mul(other)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn size(columns: u64, rows: u64) -> Size {
        Size { columns, rows }
    }

    #[test]
    fn units_are_whole_blocks_of_every_image() {
        let (one, other) = (size(48, 1000), size(64, 3));
        let mut units = Units::of(size(1000, 900), &[one, other]);
        // 192 columns are four and three blocks; the rows cannot be parted.
        assert!(units.want(&(200..390), &(5..6)));
        assert!(units.want(&(960..1000), &(0..1)));
        let window = units.window();
        assert_eq!((window.columns, window.rows), (192..1000, 0..900));
        assert!(units.leave_gaps());
        let columns = |block| units.blocks(block).map(|window| window.columns);
        let columns = |block| columns(block).collect::<Vec<_>>();
        assert_eq!(columns(one), [4..8, 8..12, 20..21]);
        assert_eq!(columns(other), [3..6, 6..9, 15..16]);
    }

    #[test]
    fn small_blocks_are_taken_together_and_too_many_refused() {
        let strips = size(5000, 1);
        let mut units = Units::of(size(5000, 5000), &[strips]);
        assert!(units.want(&(10..11), &(70..71)));
        assert_eq!(units.window().rows, 64..128);
        assert!(!units.leave_gaps());
        let side = 1 << 30;
        let mut units = Units::of(size(side, side), &[size(16, 16)]);
        let all = 0..usize::try_from(side).unwrap();
        assert!(!units.want(&all, &all));
        assert!(units.is_empty());
    }
}
