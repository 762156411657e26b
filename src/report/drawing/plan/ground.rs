//! The ground: shaded, and hatched where it is not known.

use std::ops::Range;

use super::{INSET, MAP, relief};
use crate::report::drawing::sheet::{Point, Sheet};
use crate::report::drawing::texture::Texture;
use crate::surroundings::{GroundGrid, Surroundings};

pub(super) fn draw(sheet: &mut Sheet, surroundings: &Surroundings) {
    let Some(grid) = &surroundings.ground else {
        return;
    };
    if let Some((picture, _)) = relief::picture(grid) {
        sheet.image(&picture, (INSET, INSET), (MAP, MAP));
    }
    voids(sheet, grid);
}

/// Hatches the cells without a height: a rectangle for each run of them along a row, as long as
/// the rows below have the same.
#[allow(clippy::cast_precision_loss)] // 160
fn voids(sheet: &mut Sheet, grid: &GroundGrid) {
    let mut done: Vec<(Range<usize>, Range<usize>)> = Vec::new();
    let mut open: Vec<(Range<usize>, usize)> = Vec::new();
    for row in 0..=grid.side {
        let runs = runs(grid, row);
        let (kept, ended): (Vec<_>, Vec<_>) =
            open.into_iter().partition(|(run, _)| runs.contains(run));
        done.extend(ended.into_iter().map(|(run, top)| (run, top..row)));
        open = kept;
        for run in runs {
            if !open.iter().any(|(known, _)| *known == run) {
                open.push((run, row));
            }
        }
    }
    let cell = MAP / grid.side as f64;
    let at = |number: usize| INSET + number as f64 * cell;
    let areas: Vec<[Point; 4]> = done
        .into_iter()
        .map(|(columns, rows)| {
            let (left, right) = (at(columns.start), at(columns.end));
            let (top, bottom) = (at(rows.start), at(rows.end));
            [(left, top), (right, top), (right, bottom), (left, bottom)]
        })
        .collect();
    let parts: Vec<(&[Point], bool)> = areas.iter().map(|area| (&area[..], true)).collect();
    sheet.textured("zone-texture", Texture::Void, &parts);
}

/// The runs of cells without a height in a row; none beyond the last one.
fn runs(grid: &GroundGrid, row: usize) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    if row >= grid.side {
        return runs;
    }
    for column in (0..grid.side).filter(|column| grid.height(*column, row).is_none()) {
        match runs.last_mut() {
            Some(run) if run.end == column => run.end += 1,
            _ => runs.push(column..column + 1),
        }
    }
    runs
}
