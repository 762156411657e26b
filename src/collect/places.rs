//! Where maps are wanted.

use std::collections::BTreeSet;

use geo::{Coord, Rect};

use super::spots::Spots;
use crate::quantity::{Length, unit::meter};
use crate::service::DegreeBox;
use crate::site::Location;

/// Places that maps are wanted around, for any number of places: beyond some thousands they are
/// kept as the cells of a fine net.
///
/// ```
/// use sillmark::collect::Places;
/// use sillmark::quantity::{Length, unit::meter};
/// use sillmark::site::Location;
/// let mut places = Places::default();
/// for (longitude, latitude) in [(-74.03, 40.74), (-74.02, 40.75), (5.9, 52.0)] {
///     places.add(Location::from_degrees(longitude, latitude)?);
/// }
/// // Two towns, an ocean between them.
/// assert_eq!(places.boxes(Length::new::<meter>(2100.0)).len(), 2);
/// # Ok::<(), sillmark::site::LocationError>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct Places {
    cells: BTreeSet<Cell>,
    bounds: Option<Rect<f64>>,
    spots: Spots,
}

/// Row (south to north) and column (west to east) of a cell.
pub(super) type Cell = (i32, i32);

/// Side of a cell, degrees: some five kilometres, about as far as maps are read around a place.
const SIDE: f64 = 0.05;

/// A service is not asked for more boxes than this; places that lie in more share larger ones,
/// which may hold much that lies between them.
const MOST: usize = 1024;

/// Metres in a degree of longitude at the equator, and in the shortest degree of latitude, at
/// the equator as well (WGS 84: π a / 180 and π a (1 − e²) / 180).
pub(super) const LONGITUDE_METRES: f64 = 111_319.0;
const LATITUDE_METRES: f64 = 110_574.0;

impl From<Location> for Places {
    /// One place.
    fn from(place: Location) -> Self {
        let mut places = Self::default();
        places.add(place);
        places
    }
}

impl Places {
    /// Adds a place.
    pub fn add(&mut self, place: Location) {
        let at = Coord {
            x: place.longitude(),
            y: place.latitude(),
        };
        self.cells.insert((number(at.y, SIDE), number(at.x, SIDE)));
        self.spots.add(place);
        let bounds = self.bounds.get_or_insert_with(|| Rect::new(at, at));
        let (low, high) = (bounds.min(), bounds.max());
        *bounds = Rect::new(
            (low.x.min(at.x), low.y.min(at.y)),
            (high.x.max(at.x), high.y.max(at.y)),
        );
    }

    /// Whether no place was added.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.bounds.is_none()
    }

    /// Places such that each that was added lies within the length of one of them.
    #[must_use]
    pub fn spots(&self) -> (Vec<Location>, Length) {
        self.spots.list()
    }

    /// Boxes that hold everything within a margin of a place, from south to north. They may
    /// overlap; none crosses the antimeridian.
    #[must_use]
    pub fn boxes(&self, margin: Length) -> Vec<DegreeBox> {
        let Some(bounds) = self.bounds else {
            return Vec::new();
        };
        let mut cells = self.cells.clone();
        let mut side = SIDE;
        let mut merged = rectangles(&cells);
        while merged.len() > MOST {
            side *= 2.0;
            cells = cells
                .into_iter()
                .map(|(row, column)| (row.div_euclid(2), column.div_euclid(2)))
                .collect();
            merged = rectangles(&cells);
        }
        let boxes = merged.into_iter().map(|((bottom, left), (top, right))| {
            // Not farther than the places themselves: a cell may stand out.
            let low = Coord {
                x: (f64::from(left) * side).max(bounds.min().x),
                y: (f64::from(bottom) * side).max(bounds.min().y),
            };
            let high = Coord {
                x: (f64::from(right + 1) * side).min(bounds.max().x),
                y: (f64::from(top + 1) * side).min(bounds.max().y),
            };
            widened(Rect::new(low, high), margin)
        });
        boxes.flatten().collect()
    }
}

pub(super) fn number(degrees: f64, side: f64) -> i32 {
    // Degrees of a place lie within 180.
    #[allow(clippy::cast_possible_truncation)]
    {
        (degrees / side).floor() as i32
    }
}

/// Rectangles of cells, first and last, that together hold just these: runs in a row, and equal
/// runs in rows above each other.
fn rectangles(cells: &BTreeSet<Cell>) -> Vec<(Cell, Cell)> {
    let mut runs: Vec<(Cell, Cell)> = Vec::new();
    for &(row, column) in cells {
        match runs.last_mut() {
            Some((_, last)) if *last == (row, column - 1) => last.1 = column,
            _ => runs.push(((row, column), (row, column))),
        }
    }
    let mut merged: Vec<(Cell, Cell)> = Vec::new();
    for (first, last) in runs {
        let below = merged.iter_mut().find(|(known_first, known_last)| {
            known_last.0 == first.0 - 1 && known_first.1 == first.1 && known_last.1 == last.1
        });
        match below {
            Some((_, known_last)) => known_last.0 = last.0,
            None => merged.push((first, last)),
        }
    }
    merged
}

/// A box with a margin around it: two where that crosses the antimeridian, and all longitudes
/// where it reaches a pole.
fn widened(inner: Rect<f64>, margin: Length) -> Vec<DegreeBox> {
    let metres = margin.get::<meter>();
    let south = (inner.min().y - metres / LATITUDE_METRES).max(-90.0);
    let north = (inner.max().y + metres / LATITUDE_METRES).min(90.0);
    let narrowest = south.abs().max(north.abs()).to_radians().cos();
    let whole = |west, east| DegreeBox(Rect::new((west, south), (east, north)));
    let across = metres / (LONGITUDE_METRES * narrowest.max(f64::EPSILON));
    let (west, east) = (inner.min().x - across, inner.max().x + across);
    if east - west >= 360.0 {
        vec![whole(-180.0, 180.0)]
    } else if west < -180.0 {
        vec![whole(west + 360.0, 180.0), whole(-180.0, east)]
    } else if east > 180.0 {
        vec![whole(west, 180.0), whole(-180.0, east - 360.0)]
    } else {
        vec![whole(west, east)]
    }
}
