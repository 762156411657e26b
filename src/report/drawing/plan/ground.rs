//! The ground: shaded, and hatched where it is not known.

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

/// Hatches the cells without a height, a strip for each run of them.
#[allow(clippy::cast_precision_loss)] // 160
fn voids(sheet: &mut Sheet, grid: &GroundGrid) {
    let cell = MAP / grid.side as f64;
    let mut strips: Vec<[Point; 4]> = Vec::new();
    for row in 0..grid.side {
        let top = INSET + row as f64 * cell;
        let mut start = None;
        for column in 0..=grid.side {
            let void = column < grid.side && grid.height(column, row).is_none();
            match (void, start) {
                (true, None) => start = Some(column),
                (false, Some(first)) => {
                    let (left, right) = (INSET + first as f64 * cell, INSET + column as f64 * cell);
                    let bottom = top + cell;
                    strips.push([(left, top), (right, top), (right, bottom), (left, bottom)]);
                    start = None;
                }
                _ => {}
            }
        }
    }
    let parts: Vec<(&[Point], bool)> = strips.iter().map(|strip| (&strip[..], true)).collect();
    sheet.textured("zone-texture", Texture::Void, &parts);
}
