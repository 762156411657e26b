//! Metres in the coordinates of a system, from a lattice of degrees.

use std::cell::RefCell;

use geo::Coord;

use super::Projector;
use super::local_frame::Metres;
use crate::site::Location;

/// The last cells of the lattice that were asked for.
///
/// The directions of a metre change by some 10⁻⁷ of their length with every metre of the way,
/// smoothly. So they are measured at the corners of a cell of the lattice and interpolated
/// between them, which saves two of three transformations at each place. A cell counts only
/// where they are right in its middle to [`TOLERANCE`]; the interpolation is at its worst
/// there. Cells depend on nothing but the system, so that a place has the same frame
/// whichever was asked before.
#[derive(Default)]
pub(super) struct Lattice {
    cells: RefCell<Vec<Option<Kept>>>,
}

struct Kept {
    column: i32,
    row: i32,
    /// West to east in the south, then in the north; `None` where the cell does not count.
    corners: Option<[Metres; 4]>,
}

/// Cells in a degree.
const PER_DEGREE: f64 = 100.0;

/// Cells are kept for a square of so many.
const SIDE: i32 = 16;

/// How far the interpolated length of a metre may be off in the middle of a cell, as a share.
const TOLERANCE: f64 = 1e-7;

/// Nearer to a pole the meridians run together too fast.
const HIGHEST_LATITUDE: f64 = 80.0;

impl Lattice {
    /// The metres at a place; `None` where they have to be measured there.
    pub(super) fn metres(&self, projector: &Projector, location: Location) -> Option<Metres> {
        if location.latitude().abs() > HIGHEST_LATITUDE {
            return None;
        }
        let (east, north) = (
            location.longitude() * PER_DEGREE,
            location.latitude() * PER_DEGREE,
        );
        let last = 180.0 * PER_DEGREE - 1.0;
        let (west, south) = (east.floor().min(last), north.floor());
        #[allow(clippy::cast_possible_truncation)] // at most 18 000
        let (column, row) = (west as i32, south as i32);
        let slot = usize::try_from(SIDE * row.rem_euclid(SIDE) + column.rem_euclid(SIDE)).ok()?;
        let share = |corners: &[Metres; 4]| between(corners, east - west, north - south);
        if let Some(Some(kept)) = self.cells.borrow().get(slot)
            && (kept.column, kept.row) == (column, row)
        {
            return kept.corners.as_ref().map(share);
        }
        let corners = measured(projector, west, south);
        let found = corners.as_ref().map(share);
        let mut cells = self.cells.borrow_mut();
        if cells.is_empty() {
            cells.resize_with(usize::try_from(SIDE * SIDE).ok()?, || None);
        }
        if let Some(place) = cells.get_mut(slot) {
            *place = Some(Kept {
                column,
                row,
                corners,
            });
        }
        found
    }
}

/// The corners of a cell, where one may interpolate between them.
fn measured(projector: &Projector, west: f64, south: f64) -> Option<[Metres; 4]> {
    let at = |east: f64, north: f64| {
        let place = Coord {
            x: (west + east) / PER_DEGREE,
            y: (south + north) / PER_DEGREE,
        };
        let origin = projector.project_degrees(place.x, place.y).ok()?;
        // All to the side of the cell, also where a corner lies on the equator.
        Metres::measure(projector, place, origin, Coord { x: west, y: south }).ok()
    };
    let corners = [at(0.0, 0.0)?, at(1.0, 0.0)?, at(0.0, 1.0)?, at(1.0, 1.0)?];
    let (middle, guess) = (at(0.5, 0.5)?, between(&corners, 0.5, 0.5));
    let is_near = |one: Coord<f64>, other: Coord<f64>| {
        let apart = one - other;
        apart.x.hypot(apart.y) <= TOLERANCE * one.x.hypot(one.y)
    };
    (is_near(middle.east, guess.east) && is_near(middle.north, guess.north)).then_some(corners)
}

fn between(corners: &[Metres; 4], east: f64, north: f64) -> Metres {
    let [south_west, south_east, north_west, north_east] = corners;
    let mix = |pick: fn(&Metres) -> Coord<f64>| {
        let south = pick(south_west) * (1.0 - east) + pick(south_east) * east;
        let north_side = pick(north_west) * (1.0 - east) + pick(north_east) * east;
        south * (1.0 - north) + north_side * north
    };
    Metres {
        east: mix(|corner| corner.east),
        north: mix(|corner| corner.north),
    }
}
