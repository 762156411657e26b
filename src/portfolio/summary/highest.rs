//! The rows with the highest figures.

use std::cmp::Ordering;

use serde::{Deserialize, Serialize};

use super::rounded::{at_most, degrees};
use super::row::RowFigures;
use crate::site::Location;
use crate::statement::Choice;
use crate::verdict::Verdict;

/// A row of the ranking.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Written", into = "Written")]
pub struct RankedRow {
    /// The row's id, of at most [`Highest::ID_LENGTH`] characters.
    pub id: String,
    /// Where it stands, to a ten-millionth of a degree.
    pub location: Option<Location>,
    /// Its verdict.
    pub verdict: Verdict,
    /// What it is ranked by.
    pub figure: f64,
}

/// The rows with the highest figure, the highest first; rows with the same figure by id.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Highest {
    rows: Vec<RankedRow>,
}

impl Highest {
    /// How many rows are kept.
    pub const ROWS: usize = 20;
    /// Characters of an id that are kept.
    pub const ID_LENGTH: usize = 100;

    pub(super) fn add(&mut self, row: &RowFigures<'_>, figure: f64) {
        let id = at_most(row.id, Self::ID_LENGTH);
        // Most rows stop here, before anything is copied.
        if self.rows.len() == Self::ROWS
            && let Some(last) = self.rows.last()
            && figure
                .total_cmp(&last.figure)
                .then_with(|| last.id.as_str().cmp(&id))
                .is_lt()
        {
            return;
        }
        self.insert(RankedRow {
            id: id.into_owned(),
            location: row.location.and_then(written_location),
            verdict: row.verdict,
            figure,
        });
    }

    fn insert(&mut self, row: RankedRow) {
        let place = self
            .rows
            .partition_point(|known| known.rank(&row) != Ordering::Greater);
        if place < Self::ROWS {
            self.rows.insert(place, row);
            self.rows.truncate(Self::ROWS);
        }
    }

    pub(super) fn merge(&mut self, other: &Self) {
        for row in &other.rows {
            self.insert(row.clone());
        }
    }

    /// The rows, the highest figure first.
    #[must_use]
    pub fn rows(&self) -> &[RankedRow] {
        &self.rows
    }
}

impl RankedRow {
    /// A full order, so that it does not matter which of two rows came first.
    fn rank(&self, other: &Self) -> Ordering {
        let place = |row: &Self| {
            row.location
                .map_or((f64::NEG_INFINITY, f64::NEG_INFINITY), |place| {
                    (place.longitude(), place.latitude())
                })
        };
        let (one, two) = (place(self), place(other));
        other
            .figure
            .total_cmp(&self.figure)
            .then_with(|| self.id.cmp(&other.id))
            .then_with(|| one.0.total_cmp(&two.0))
            .then_with(|| one.1.total_cmp(&two.1))
            .then_with(|| self.verdict.cmp(&other.verdict))
    }
}

fn written_location(place: Location) -> Option<Location> {
    Location::from_degrees(degrees(place.longitude()), degrees(place.latitude())).ok()
}

/// A row as it is written down: id, longitude and latitude, verdict, figure.
#[derive(Serialize, Deserialize)]
struct Written(String, Option<(f64, f64)>, String, f64);

impl From<RankedRow> for Written {
    fn from(row: RankedRow) -> Self {
        let location = row
            .location
            .map(|place| (place.longitude(), place.latitude()));
        Self(row.id, location, row.verdict.word().to_owned(), row.figure)
    }
}

impl TryFrom<Written> for RankedRow {
    type Error = String;

    fn try_from(Written(id, location, verdict, figure): Written) -> Result<Self, String> {
        let location = location
            .map(|(longitude, latitude)| Location::from_degrees(longitude, latitude))
            .transpose()
            .map_err(|error| error.to_string())?;
        let known = Verdict::CHOICES.iter().find(|(word, _)| *word == verdict);
        let (_, verdict) = known.ok_or_else(|| format!("{verdict:?} is not a verdict"))?;
        Ok(Self {
            id,
            location,
            verdict: *verdict,
            figure,
        })
    }
}
