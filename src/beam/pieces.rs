//! The member in pieces: between two cuts the load is one straight line.

use super::polynomial::Polynomial;
use super::{Beam, LinearLoad};

/// One piece; numbers in metres and newtons, t from 0 at its start to 1 at its end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    /// Its start, from the member's start.
    pub(super) from: f64,
    /// Its length.
    pub(super) length: f64,
    /// The distributed load.
    pub(super) load: Polynomial,
    /// The point loads at its start.
    pub(super) point: f64,
}

impl Piece {
    /// The place of `at` on the piece; between 0 and 1 where it lies on the piece.
    pub(super) fn t(&self, at: f64) -> f64 {
        (at - self.from) / self.length
    }

    /// The place on the member of `t`.
    pub(super) fn place(&self, t: f64) -> f64 {
        self.from + t * self.length
    }
}

/// Cuts a checked member at its ends, its supports and wherever a load begins, ends or acts.
pub(super) fn pieces(beam: &Beam) -> Vec<Piece> {
    let mut cuts = vec![0.0, beam.length.value];
    cuts.extend(beam.supports.second(beam.length).map(|at| at.value));
    for load in &beam.loads {
        cuts.extend([load.from.value, load.to.value]);
    }
    cuts.extend(beam.points.iter().map(|load| load.at.value));
    cuts.sort_by(f64::total_cmp);
    cuts.dedup();
    cuts.windows(2)
        .map(|ends| Piece {
            from: ends[0],
            length: ends[1] - ends[0],
            load: load_between(&beam.loads, ends[0], ends[1]),
            point: beam
                .points
                .iter()
                .filter(|load| is_same(load.at.value, ends[0]))
                .map(|load| load.force.value)
                .sum(),
        })
        .collect()
}

/// The sum of the loads between two neighbouring cuts.
fn load_between(loads: &[LinearLoad], start: f64, end: f64) -> Polynomial {
    let (mut at_start, mut at_end) = (0.0, 0.0);
    for load in loads {
        let (from, to) = (load.from.value, load.to.value);
        if from <= start && end <= to {
            // As a share of the load's length: no slope, which a short load could make infinite.
            let value = |at: f64| {
                let share = (at - from) / (to - from);
                (1.0 - share) * load.at_from.value + share * load.at_to.value
            };
            at_start += value(start);
            at_end += value(end);
        }
    }
    Polynomial::line(at_start, at_end)
}

/// Both come from one list of cuts, so they are the same number or different places.
#[allow(clippy::float_cmp)]
fn is_same(place: f64, cut: f64) -> bool {
    place == cut
}
