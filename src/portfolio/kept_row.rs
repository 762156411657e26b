//! Rows packed while they wait: a million of them are the largest part of a batch.

use super::room::make_room;
use super::row::{OpeningRow, Row};
use crate::quantity::{Elevation, Length, UnitSystem, VerticalDatum, unit::meter};
use crate::site::{Location, Threshold};

/// A row in 40 bytes; its datum and its line are told by its [`Rows`].
#[derive(Debug)]
pub(super) struct KeptRow {
    location: Location,
    opening: Option<Box<OpeningRow>>,
    /// Of the threshold, or of it above the ground, metres.
    height: f64,
    /// Lines after the first row.
    line: u32,
    datum: u16,
    is_estimate: bool,
    units: UnitSystem,
}

/// The rows of a stretch of the input.
#[derive(Debug, Default)]
pub(super) struct Rows {
    kept: Vec<KeptRow>,
    first_line: u64,
    datums: Vec<VerticalDatum>,
}

impl Rows {
    /// Makes room for so many rows, where there are none yet.
    pub(super) fn expect(&mut self, rows: usize) {
        make_room(&mut self.kept, rows);
    }

    /// Without its rows, but with their memory.
    pub(super) fn clear(&mut self) {
        self.kept.clear();
        self.datums.clear();
    }

    pub(super) fn push(&mut self, row: Row<Box<OpeningRow>>) {
        if self.kept.is_empty() {
            self.first_line = row.line;
        }
        let (height, is_estimate) = match row.threshold {
            Threshold::Stated(elevation) => (elevation.height(), false),
            Threshold::AboveGround { height, .. } => (height, true),
        };
        let datum = self.datum(row.threshold.datum());
        self.kept.push(KeptRow {
            location: row.location,
            opening: row.opening,
            height: height.get::<meter>(),
            // A block has far fewer lines and datums than these hold.
            line: u32::try_from(row.line - self.first_line).unwrap_or(u32::MAX),
            datum: u16::try_from(datum).unwrap_or(u16::MAX),
            is_estimate,
            units: row.units,
        });
    }

    /// The position of a datum among those of these rows; most have one.
    fn datum(&mut self, datum: VerticalDatum) -> usize {
        let known = self.datums.iter().position(|known| *known == datum);
        known.unwrap_or_else(|| {
            self.datums.push(datum);
            self.datums.len() - 1
        })
    }

    pub(super) fn len(&self) -> usize {
        self.kept.len()
    }

    /// Bytes that they take.
    pub(super) fn bytes(&self) -> usize {
        let openings = self.kept.iter().filter_map(|row| row.opening.as_ref());
        let openings: usize = openings.map(|opening| opening.bytes()).sum();
        self.kept.capacity() * size_of::<KeptRow>() + openings
    }

    /// The row at a position.
    pub(super) fn get(&self, position: usize) -> Option<Row<&OpeningRow>> {
        let kept = self.kept.get(position)?;
        let datum = *self.datums.get(usize::from(kept.datum))?;
        let height = Length::new::<meter>(kept.height);
        Some(Row {
            line: self.first_line + u64::from(kept.line),
            location: kept.location,
            threshold: if kept.is_estimate {
                Threshold::AboveGround { height, datum }
            } else {
                Threshold::Stated(Elevation::new(height, datum))
            },
            units: kept.units,
            opening: kept.opening.as_deref(),
        })
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = Row<&OpeningRow>> {
        (0..self.len()).filter_map(|position| self.get(position))
    }

    pub(super) fn locations(&self) -> impl Iterator<Item = Location> {
        self.kept.iter().map(|row| row.location)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_comes_back_as_it_was() {
        assert_eq!(size_of::<KeptRow>(), 40);
        let metres = Length::new::<meter>;
        let rows = [
            Threshold::Stated(Elevation::new(metres(2.4), VerticalDatum::Navd88)),
            Threshold::AboveGround {
                height: metres(0.3),
                datum: VerticalDatum::Odn,
            },
            Threshold::Stated(Elevation::new(metres(-1.0), VerticalDatum::Navd88)),
        ]
        .map(|threshold| Row {
            line: 70_000_000_000,
            location: Location::from_degrees(-76.5, 41.2).unwrap(),
            threshold,
            units: UnitSystem::Us,
            opening: Some(Box::new(OpeningRow {
                opening: "door".to_owned(),
                ..OpeningRow::default()
            })),
        });
        let mut kept = Rows::default();
        for row in rows.clone() {
            kept.push(row);
        }
        for (row, back) in rows.iter().zip(kept.iter()) {
            assert_eq!(
                (row.line, row.location, row.threshold, row.units),
                (back.line, back.location, back.threshold, back.units)
            );
            assert_eq!(row.opening.as_deref(), back.opening);
        }
        assert_eq!(kept.datums.len(), 2);
    }
}
