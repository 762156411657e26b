//! The forces of the supports, and the member integrated from its start.

use super::pieces::Piece;
use super::polynomial::Polynomial;
use super::{Beam, Supports, pieces::pieces};

/// What holds the member, in newtons and newton metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Hold {
    /// Force of the start, against the water.
    pub(super) start: f64,
    /// Moment of the fixed start, against the water's turning.
    pub(super) moment: f64,
    /// Force of the far support or the prop, against the water.
    pub(super) second: f64,
}

/// One piece with its response; slope and deflection times E·I.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Bent {
    pub(super) piece: Piece,
    pub(super) shear: Polynomial,
    pub(super) moment: Polynomial,
    pub(super) slope: Polynomial,
    pub(super) deflection: Polynomial,
}

/// Solves a member that has been checked.
pub(super) fn solve(beam: &Beam) -> (Hold, Vec<Bent>) {
    let pieces = pieces(beam);
    let second = beam.supports.second(beam.length).map(|at| at.value);
    let (force, turning) = totals(beam);
    let fixed = |second_force: f64, at: f64| Hold {
        start: force - second_force,
        moment: turning - second_force * at,
        second: second_force,
    };
    match (beam.supports, second) {
        (Supports::Propped { .. }, Some(at)) => {
            // The prop undoes the deflection that the member would have there without it; a
            // force R at `at` deflects a cantilever by R·at³/(3·E·I) there.
            let alone = deflection_at(&integrate(&pieces, &fixed(0.0, 0.0), None, 0.0), at);
            let hold = fixed(3.0 * alone / (at * at * at), at);
            (hold, integrate(&pieces, &hold, second, 0.0))
        }
        (Supports::SimplySupported | Supports::PinnedAndPropped { .. }, Some(at)) => {
            let hold = Hold {
                moment: 0.0,
                ..fixed(turning / at, at)
            };
            // The start turns as much as brings the second support back to its place.
            let unturned = deflection_at(&integrate(&pieces, &hold, second, 0.0), at);
            (hold, integrate(&pieces, &hold, second, -unturned / at))
        }
        (_, None) | (Supports::Cantilever, _) => {
            let hold = fixed(0.0, 0.0);
            (hold, integrate(&pieces, &hold, None, 0.0))
        }
    }
}

/// The sum of all loads, and their moment about the start.
fn totals(beam: &Beam) -> (f64, f64) {
    let (mut force, mut turning) = (0.0, 0.0);
    for load in &beam.loads {
        let length = (load.to - load.from).value;
        let (first, last) = (load.at_from.value, load.at_to.value);
        let resultant = length * f64::midpoint(first, last);
        force += resultant;
        turning += load.from.value * resultant + length * length * (first + 2.0 * last) / 6.0;
    }
    for load in &beam.points {
        force += load.force.value;
        turning += load.force.value * load.at.value;
    }
    (force, turning)
}

/// V′ = −q, M′ = V, E·I·θ′ = −M, E·I·v′ = E·I·θ, from the start to the far end; the start does
/// not move.
fn integrate(pieces: &[Piece], hold: &Hold, second: Option<f64>, slope: f64) -> Vec<Bent> {
    let (mut shear, mut moment, mut slope, mut deflection) = (hold.start, -hold.moment, slope, 0.0);
    let mut bent = Vec::with_capacity(pieces.len());
    for piece in pieces {
        shear -= piece.point;
        if second.is_some_and(|at| piece.from.total_cmp(&at).is_eq()) {
            shear += hold.second;
        }
        let shear_here = piece.load.integral(shear, -piece.length);
        let moment_here = shear_here.integral(moment, piece.length);
        let slope_here = moment_here.integral(slope, -piece.length);
        let deflection_here = slope_here.integral(deflection, piece.length);
        shear = shear_here.at(1.0);
        moment = moment_here.at(1.0);
        slope = slope_here.at(1.0);
        deflection = deflection_here.at(1.0);
        bent.push(Bent {
            piece: *piece,
            shear: shear_here,
            moment: moment_here,
            slope: slope_here,
            deflection: deflection_here,
        });
    }
    bent
}

/// E·I times the deflection at a place.
fn deflection_at(bent: &[Bent], at: f64) -> f64 {
    piece_at(bent, at).map_or(0.0, |bent| bent.deflection.at(bent.piece.t(at)))
}

/// The piece that a place lies on; at a cut the one beyond it.
pub(super) fn piece_at(bent: &[Bent], at: f64) -> Option<&Bent> {
    let after = bent.partition_point(|bent| bent.piece.from <= at);
    bent.get(after.saturating_sub(1))
}
