//! Many places in little memory.

use std::collections::BTreeSet;

use super::places::{Cell, LONGITUDE_METRES, number};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// Places one by one, and beyond [`MOST`] the cells of a net that they lie in.
#[derive(Clone, Debug)]
pub(super) enum Spots {
    Places(Vec<Location>),
    Cells(BTreeSet<Cell>),
}

/// So many places are kept one by one.
const MOST: usize = 10_000;

/// Side of a cell, degrees: some hundred metres.
const SIDE: f64 = 0.001;

impl Default for Spots {
    fn default() -> Self {
        Self::Places(Vec::new())
    }
}

impl Spots {
    pub(super) fn add(&mut self, place: Location) {
        match self {
            Self::Places(places) if places.len() < MOST => places.push(place),
            Self::Places(places) => {
                let cells = places.iter().chain([&place]).map(|place| cell(*place));
                *self = Self::Cells(cells.collect());
            }
            Self::Cells(cells) => {
                cells.insert(cell(place));
            }
        }
    }

    /// The places, or the middles of the cells with what a place may lie away from them.
    pub(super) fn list(&self) -> (Vec<Location>, Length) {
        match self {
            Self::Places(places) => (places.clone(), Length::default()),
            Self::Cells(cells) => {
                let middle = |number: i32| (f64::from(number) + 0.5) * SIDE;
                let middles = cells.iter().filter_map(|(row, column)| {
                    // The last row reaches over the pole.
                    let latitude = middle(*row).min(90.0);
                    Location::from_degrees(middle(*column).min(180.0), latitude).ok()
                });
                // No degree of the ellipsoid is longer than one and a half percent more than
                // one of longitude at the equator; half the diagonal of a square of such.
                let half = SIDE * LONGITUDE_METRES * 1.015 / 2.0_f64.sqrt();
                (middles.collect(), Length::new::<meter>(half))
            }
        }
    }
}

fn cell(place: Location) -> Cell {
    (
        number(place.latitude(), SIDE),
        number(place.longitude(), SIDE),
    )
}
