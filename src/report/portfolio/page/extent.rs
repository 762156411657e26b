//! Which cells a map holds.

use crate::portfolio::summary::{Cell, Lattice};

/// The cells of a map, counted from its south-western corner.
pub(super) struct Extent {
    pub(super) lattice: Lattice,
    /// Column of the western edge, eastward from Greenwich.
    pub(super) west: i32,
    /// Row of the southern edge, northward from the equator.
    pub(super) south: i32,
    pub(super) columns: i32,
    pub(super) rows: i32,
}

/// More cells than this across or up are too small to be seen.
const MOST_ACROSS: i32 = 44;

impl Extent {
    /// The cells of `lattice`, made coarser until they can be seen; `None` without a cell.
    pub(super) fn of(lattice: &Lattice) -> Option<Self> {
        let mut extent = Self::at(lattice.clone())?;
        while extent.columns.max(extent.rows) > MOST_ACROSS {
            let Some(coarser) = extent.lattice.coarser() else {
                break;
            };
            extent = Self::at(coarser)?;
        }
        Some(extent)
    }

    fn at(lattice: Lattice) -> Option<Self> {
        let (west, columns) = around(
            lattice.cells().map(|cell| cell.column),
            lattice.columns_around(),
        )?;
        let south = lattice.cells().map(|cell| cell.row).min()?;
        let north = lattice.cells().map(|cell| cell.row).max()?;
        Some(Self {
            west,
            south,
            columns,
            rows: north - south + 1,
            lattice,
        })
    }

    /// The cells with their column and row counted from the corner.
    pub(super) fn cells(&self) -> impl Iterator<Item = (i32, i32, Cell)> {
        let around = self.lattice.columns_around();
        self.lattice.cells().map(move |cell| {
            let column = (cell.column - self.west).rem_euclid(around);
            (column, cell.row - self.south, cell)
        })
    }
}

/// The shortest run of columns around the earth that holds all of `occupied`: its first column
/// and their number. Places on both sides of the meridian of 180 degrees are neighbours.
fn around(occupied: impl Iterator<Item = i32>, all: i32) -> Option<(i32, i32)> {
    let mut columns: Vec<i32> = occupied.collect();
    columns.sort_unstable();
    columns.dedup();
    let first = *columns.first()?;
    let next = columns.iter().skip(1).copied().chain([first + all]);
    let gaps = columns.iter().zip(next);
    let (before, after) = gaps.max_by_key(|(column, next)| (next - *column, -**column))?;
    let west = if after > first + all - 1 {
        first
    } else {
        after
    };
    Some((west, all - (after - before) + 1))
}

#[cfg(test)]
mod tests {
    use super::around;

    #[test]
    fn the_shortest_way_around() {
        let run = |columns: &[i32]| around(columns.iter().copied(), 360);
        assert_eq!(run(&[]), None);
        assert_eq!(run(&[7]), Some((7, 1)));
        assert_eq!(run(&[-3, 4, 9]), Some((-3, 13)));
        assert_eq!(run(&[-180, -179, 178, 179]), Some((178, 4)));
        assert_eq!(run(&[-100, 100]), Some((100, 161)));
    }
}
